using InfusionSim.Plots.Panels;
using InfusionSim.Plots.Styling;
using SkiaSharp;

namespace InfusionSim.Plots.Keys;

/// <summary>A row that explains the signs that a picture uses.</summary>
internal static class SignKey
{
    /// <summary>Height of one row [px].</summary>
    internal const float RowHeight = 28;

    private const float SignWidth = 34;
    private const float Gap = 22;

    /// <summary>Rows that the signs need at a width [px].</summary>
    internal static int Rows(IReadOnlyList<KeySign> signs, float width) => Layout(signs, 0, width).Select(entry => entry.Row).DefaultIfEmpty(-1).Max() + 1;

    /// <summary>Draws the rows.</summary>
    internal static void Draw(SKCanvas canvas, IReadOnlyList<KeySign> signs, float left, float top, float width)
    {
        foreach (var (sign, x, row) in Layout(signs, left, width))
        {
            var y = top + (row + 0.5f) * RowHeight;
            Sign(canvas, sign, x, y);
            TextStyle.Label.Draw(canvas, Text(sign), x + SignWidth + 8, y, Theme.Ink);
        }
    }

    private static IEnumerable<(KeySign Sign, float X, int Row)> Layout(IReadOnlyList<KeySign> signs, float left, float width)
    {
        var (x, row) = (left, 0);
        foreach (var sign in signs)
        {
            var needed = SignWidth + 8 + TextStyle.Label.Measure(Text(sign));
            if (x > left && x + needed > left + width)
            {
                (x, row) = (left, row + 1);
            }

            yield return (sign, x, row);
            x += needed + Gap;
        }
    }

    private static string Text(KeySign sign) => sign switch
    {
        KeySign.Feed => "feed",
        KeySign.Vent => "vent",
        KeySign.Membrane or KeySign.MembraneFitting => "vent that holds resin",
        KeySign.HoseJoint => "hose joins here",
        KeySign.LayUp => "edge of a lay-up",
        KeySign.Gap => "gap",
        KeySign.Mesh => "edge of the flow mesh",
        KeySign.MeshOnToolSide => "edge of the flow mesh on the tool side",
        KeySign.Core => "edge of the core",
        KeySign.Fibres => "cloth runs this way",
        KeySign.TimingMark => "timing mark",
        KeySign.LastPlace => "last to fill",
        KeySign.LargestLag => "longest behind",
        KeySign.DrySpot => "dry spot",
        KeySign.NeverReached => "never reached",
        KeySign.Front => "front",
        KeySign.Dry => "dry so far",
        _ => "wet cloth",
    };

    private static void Sign(SKCanvas canvas, KeySign sign, float x, float y)
    {
        SKPoint[] bar = [new(x + 4, y), new(x + SignWidth - 4, y)];
        var middle = new SKPoint(x + SignWidth / 2, y);
        switch (sign)
        {
            case KeySign.Feed: LineSigns.Feed(canvas, bar, 8); break;
            case KeySign.Vent: LineSigns.Vent(canvas, bar, 8, false); break;
            case KeySign.Membrane: LineSigns.Vent(canvas, bar, 8, true); break;
            case KeySign.MembraneFitting: LineSigns.Vent(canvas, [middle], 14, true); break;
            case KeySign.HoseJoint: LayUpSigns.HoseJoint(canvas, middle); break;
            case KeySign.Gap: LayUpSigns.Gap(canvas, bar); break;
            case KeySign.Fibres: PlacedSigns.FibreStrokes(canvas, middle, -MathF.PI / 4, 10); break;
            case KeySign.LargestLag: LineSigns.LargestLag(canvas, middle, 0.75f); break;
            case KeySign.TimingMark: LineSigns.TimingMark(canvas, middle); break;
            case KeySign.LastPlace: LineSigns.LastPlace(canvas, middle, 0.75f); break;
            case KeySign.Front: Line(canvas, bar); break;
            default: Swatch(canvas, sign, new SKRect(x + 2, y - 9, x + SignWidth - 2, y + 9)); break;
        }
    }

    private static void Line(SKCanvas canvas, SKPoint[] bar)
    {
        using var stroke = Theme.Stroke(Theme.Ink, 3);
        canvas.DrawLine(bar[0], bar[1], stroke);
    }

    private static void Swatch(SKCanvas canvas, KeySign sign, SKRect box)
    {
        using var builder = new SKPathBuilder();
        builder.AddRect(box);
        using var path = builder.Detach();
        if (sign == KeySign.DrySpot)
        {
            Hatching.DrySpot(canvas, path);
        }
        else if (sign == KeySign.NeverReached)
        {
            Hatching.NeverReached(canvas, path);
        }
        else if (sign is KeySign.Mesh or KeySign.MeshOnToolSide)
        {
            LayUpSigns.Mesh(canvas, path, sign == KeySign.MeshOnToolSide, 6);
        }
        else if (sign == KeySign.LayUp)
        {
            PanelPainter.ZoneBorder(canvas, path);
        }
        else if (sign == KeySign.Core)
        {
            LayUpSigns.Core(canvas, path);
        }
        else
        {
            using var fill = Theme.Fill(sign == KeySign.Dry ? Theme.BareCloth : Theme.Resin);
            using var border = Theme.Stroke(Theme.Ink, 1.2f);
            canvas.DrawPath(path, fill);
            canvas.DrawPath(path, border);
        }
    }
}

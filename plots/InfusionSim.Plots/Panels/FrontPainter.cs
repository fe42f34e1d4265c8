using InfusionSim.Plots.Contours;
using InfusionSim.Plots.Styling;
using InfusionSim.Protocol.V1;
using SkiaSharp;

namespace InfusionSim.Plots.Panels;

/// <summary>Draws lines of the cloth and what is dry at a time; the canvas is already cut to the cloth.</summary>
internal static class FrontPainter
{
    private const float FrontWidth = 2.4f;

    /// <summary>Draws open lines.</summary>
    internal static void Lines(SKCanvas canvas, PanelView view, IEnumerable<IReadOnlyList<Spot>> lines, SKPaint stroke)
    {
        foreach (var line in lines)
        {
            using var builder = new SKPathBuilder();
            builder.AddPoly([.. LineThinner.Thin(view.ToPixels(line), 0.12f)], false);
            using var path = builder.Detach();
            canvas.DrawPath(path, stroke);
        }
    }

    /// <summary>Covers the cloth that is dry at a time: pale with the front as a strong line while it runs, hatched when it is over.</summary>
    internal static void DryAt(SKCanvas canvas, PanelView view, ArrivalMap map, double timeS, bool isEnd)
    {
        if (isEnd)
        {
            PanelPainter.Regions(canvas, view, map.Around(SquareState.DrySpot), map.Around(SquareState.NeverReached));
            return;
        }

        // The strokes first, then all fills over their inner halves: what is left is the border of the whole dry cloth.
        var areas = new[] { map.Around(SquareState.DrySpot), map.Around(SquareState.NeverReached), map.From(timeS) }.Select(view.ToPath).ToArray();
        using var dry = Theme.Fill(Theme.BareCloth);
        using var front = Theme.Stroke(Theme.Ink, 2 * FrontWidth);
        Array.ForEach(areas, area => canvas.DrawPath(area, front));
        Array.ForEach(areas, area => canvas.DrawPath(area, dry));
        Array.ForEach(areas, area => area.Dispose());
    }
}

using InfusionSim.Plots.Charts;
using InfusionSim.Plots.Styling;
using SkiaSharp;

namespace InfusionSim.Plots.Keys;

/// <summary>The foot of a comparison of resins: how each is drawn, its name and how it ends.</summary>
internal static class ResinKey
{
    private const float RowHeight = 24;
    private const float SampleWidth = 52;

    /// <summary>Height of the key [px].</summary>
    internal static float Height(int count) => (count + 1) * RowHeight;

    /// <summary>Draws the key.</summary>
    /// <param name="canvas">What to draw on.</param>
    /// <param name="lines">The resins.</param>
    /// <param name="best">Place of the best in the list; null when none meets the goals [-].</param>
    /// <param name="left">Left edge [px].</param>
    /// <param name="top">Upper edge [px].</param>
    /// <param name="width">Width [px].</param>
    internal static void Draw(SKCanvas canvas, IReadOnlyList<ResinLine> lines, int? best, float left, float top, float width)
    {
        var y = top + RowHeight / 2;
        foreach (var line in lines)
        {
            using var stroke = line.Style.Stroke(3);
            canvas.DrawLine(left, y, left + SampleWidth, y, stroke);
            var style = line.Number - 1 == best ? TextStyle.StrongLabel : TextStyle.Label;
            var text = line.Number - 1 == best ? $"{line.Name}: {line.Story} (best)" : $"{line.Name}: {line.Story}";
            style.Draw(canvas, Header.Shorten(text, width - SampleWidth - 12, style), left + SampleWidth + 12, y, Theme.Ink);
            y += RowHeight;
        }

        CurvePainter.Dot(canvas, new SKPoint(left + SampleWidth / 4, y), 5.5f, Theme.Ink);
        GelMark.Draw(canvas, new SKPoint(left + 3 * SampleWidth / 4, y), Theme.Ink);
        TextStyle.Label.Draw(canvas, "dot: full, or at rest; cross: gel", left + SampleWidth + 12, y, Theme.Ink);
    }
}

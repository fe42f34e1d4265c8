using InfusionSim.Plots.Contours;
using InfusionSim.Plots.Styling;
using SkiaSharp;

namespace InfusionSim.Plots.Charts;

/// <summary>Draws the curves and dots of charts.</summary>
internal static class CurvePainter
{
    /// <summary>Draws a curve.</summary>
    internal static void Line(SKCanvas canvas, IReadOnlyList<SKPoint> line, SKPaint stroke)
    {
        using var builder = new SKPathBuilder();
        builder.AddPoly([.. LineThinner.Thin(line, 0.1f)], false);
        using var path = builder.Detach();
        canvas.DrawPath(path, stroke);
    }

    /// <summary>Draws a dot with a border.</summary>
    internal static void Dot(SKCanvas canvas, SKPoint at, float radius, SKColor colour)
    {
        using var fill = Theme.Fill(colour);
        using var border = Theme.Stroke(Theme.Ink, 2);
        canvas.DrawCircle(at, radius, fill);
        canvas.DrawCircle(at, radius, border);
    }
}

using InfusionSim.Plots.Styling;
using SkiaSharp;

namespace InfusionSim.Plots.Charts;

/// <summary>The cross at which a resin gels.</summary>
internal static class GelMark
{
    /// <summary>Half of the cross [px].</summary>
    internal const float Arm = 6.5f;

    /// <summary>Draws the cross.</summary>
    internal static void Draw(SKCanvas canvas, SKPoint at, SKColor colour)
    {
        using var casing = Theme.Stroke(Theme.Paper, 7);
        using var body = Theme.Stroke(colour, 3.2f);
        foreach (var stroke in new[] { casing, body })
        {
            canvas.DrawLine(at.X - Arm, at.Y - Arm, at.X + Arm, at.Y + Arm, stroke);
            canvas.DrawLine(at.X - Arm, at.Y + Arm, at.X + Arm, at.Y - Arm, stroke);
        }
    }
}

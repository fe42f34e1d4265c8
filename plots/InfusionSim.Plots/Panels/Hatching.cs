using InfusionSim.Plots.Styling;
using SkiaSharp;

namespace InfusionSim.Plots.Panels;

/// <summary>Hatches that tell a dry spot from cloth that is never reached, in black and white too.</summary>
internal static class Hatching
{
    private const float SmallArea = 16;

    /// <summary>Dry spot: white under strong black strokes that rise to the right, with a strong border.</summary>
    internal static void DrySpot(SKCanvas canvas, SKPath area)
    {
        var isSmall = Math.Min(area.Bounds.Width, area.Bounds.Height) < SmallArea;
        Paint(canvas, area, Theme.Paper, Theme.Stroke(Theme.Ink, isSmall ? 1.3f : 2.2f), isSmall ? 3.5f : 7, rising: true);
        using var border = Theme.Stroke(Theme.Ink, isSmall ? 1.6f : 2.4f);
        canvas.DrawPath(area, border);
    }

    /// <summary>Never reached: pale cloth under thin strokes that fall to the right, with a broken border.</summary>
    internal static void NeverReached(SKCanvas canvas, SKPath area)
    {
        Paint(canvas, area, Theme.BareCloth, Theme.Stroke(Theme.Quiet, 0.9f), 9, rising: false);
        using var border = Theme.Stroke(Theme.Ink, 1.4f, 6, 4);
        canvas.DrawPath(area, border);
    }

    /// <summary>A part of a chart that is out of reach: faint strokes that fall to the right, no border.</summary>
    internal static void Faint(SKCanvas canvas, SKPath area) =>
        Paint(canvas, area, Theme.Paper, Theme.Stroke(Theme.Faint, 0.9f), 9, rising: false);

    private static void Paint(SKCanvas canvas, SKPath area, SKColor ground, SKPaint stroke, float spacing, bool rising)
    {
        using var fill = Theme.Fill(ground);
        using var owned = stroke;
        canvas.DrawPath(area, fill);
        canvas.Save();
        canvas.ClipPath(area, SKClipOperation.Intersect, true);
        var box = area.Bounds;
        using var builder = new SKPathBuilder();
        // Anchored to the picture, not to the area, so that neighbouring areas hatch in one rhythm.
        var pitch = spacing * MathF.Sqrt(2);
        var first = MathF.Floor((box.Left - box.Height) / pitch) * pitch;
        for (var x = first; x < box.Right + box.Height; x += pitch)
        {
            builder.MoveTo(x, rising ? box.Bottom : box.Top);
            builder.LineTo(x + box.Height, rising ? box.Top : box.Bottom);
        }

        using var lines = builder.Detach();
        canvas.DrawPath(lines, owned);
        canvas.Restore();
    }
}

using SkiaSharp;

namespace InfusionSim.Plots.Styling;

/// <summary>A box with round corners.</summary>
internal static class Pill
{
    // Cubic that comes nearest to a quarter of a circle: 4 (√2 − 1) / 3, derived. An SVG file spells it in one piece, a conic in thirty.
    private const float Quarter = 0.5522848f;

    /// <summary>Draws a box with round corners.</summary>
    internal static void Draw(SKCanvas canvas, SKRect box, float radius, SKPaint paint)
    {
        var (r, c) = (radius, radius * (1 - Quarter));
        using var builder = new SKPathBuilder();
        builder.MoveTo(box.Left + r, box.Top);
        builder.LineTo(box.Right - r, box.Top);
        builder.CubicTo(box.Right - c, box.Top, box.Right, box.Top + c, box.Right, box.Top + r);
        builder.LineTo(box.Right, box.Bottom - r);
        builder.CubicTo(box.Right, box.Bottom - c, box.Right - c, box.Bottom, box.Right - r, box.Bottom);
        builder.LineTo(box.Left + r, box.Bottom);
        builder.CubicTo(box.Left + c, box.Bottom, box.Left, box.Bottom - c, box.Left, box.Bottom - r);
        builder.LineTo(box.Left, box.Top + r);
        builder.CubicTo(box.Left, box.Top + c, box.Left + c, box.Top, box.Left + r, box.Top);
        builder.Close();
        using var path = builder.Detach();
        canvas.DrawPath(path, paint);
    }
}

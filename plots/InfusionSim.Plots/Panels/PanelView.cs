using InfusionSim.Plots.Contours;
using SkiaSharp;

namespace InfusionSim.Plots.Panels;

/// <summary>Where the panel lies on the picture.</summary>
/// <param name="Area">The part of the picture that the panel and its labels have [px].</param>
/// <param name="Left">Picture x of the drawing's x = 0 [px].</param>
/// <param name="Bottom">Picture y of the drawing's y = 0 [px].</param>
/// <param name="PixelsPerMm">Scale [px/mm].</param>
internal sealed record PanelView(SKRect Area, double Left, double Bottom, double PixelsPerMm)
{
    /// <summary>Height that a panel needs at a width, at the largest scale allowed [px].</summary>
    internal static float HeightFor(ClothArea cloth, float width, float border, float mostHeight)
    {
        var scale = Math.Min((width - 2 * border) / cloth.WidthMm, (mostHeight - 2 * border) / cloth.HeightMm);
        return MathF.Round((float)(cloth.HeightMm * scale) + 2 * border);
    }

    /// <summary>Fits the panel into an area, centred, with a border for the labels around it [px].</summary>
    internal static PanelView Fit(ClothArea cloth, SKRect area, float border)
    {
        var scale = Math.Min((area.Width - 2 * border) / cloth.WidthMm, (area.Height - 2 * border) / cloth.HeightMm);
        return new PanelView(
            area,
            area.MidX - scale * (cloth.LeftMm + cloth.RightMm) / 2,
            area.MidY + scale * (cloth.LowestMm + cloth.HighestMm) / 2,
            scale);
    }

    /// <summary>A place of the drawing on the picture [px].</summary>
    internal SKPoint ToPixel(Spot spot) => new((float)(Left + spot.XMm * PixelsPerMm), (float)(Bottom - spot.YMm * PixelsPerMm));

    /// <summary>A point of the picture on the drawing [mm].</summary>
    internal Spot ToSpot(SKPoint pixel) => new((pixel.X - Left) / PixelsPerMm, (Bottom - pixel.Y) / PixelsPerMm);

    /// <summary>Lines of the drawing on the picture [px].</summary>
    internal IReadOnlyList<SKPoint> ToPixels(IEnumerable<Spot> line) => [.. line.Select(ToPixel)];

    /// <summary>Rings as one path, its inside by the even-odd rule.</summary>
    internal SKPath ToPath(IEnumerable<IEnumerable<Spot>> rings)
    {
        using var builder = new SKPathBuilder { FillType = SKPathFillType.EvenOdd };
        foreach (var ring in rings)
        {
            var points = LineThinner.Thin(ToPixels(ring), 0.12f);
            if (points.Count > 2)
            {
                builder.AddPoly([.. points], true);
            }
        }

        return builder.Detach();
    }
}

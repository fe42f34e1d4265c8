using InfusionSim.Plots.Contours;
using InfusionSim.Plots.Styling;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;
using SkiaSharp;

namespace InfusionSim.Plots.Panels;

/// <summary>Signs of feeds, vents, timing marks and the last place: told apart by shape.</summary>
internal static class LineSigns
{
    private const float LeastFitting = 1.9f;

    /// <summary>Width a line is drawn with: its true one, or the least that is seen [px].</summary>
    internal static float Width(double? contactWidthMm, double pixelsPerMm, float least = Theme.LeastLineWidth) =>
        Math.Max(least, (float)((contactWidthMm ?? PlanDefaults.ContactWidthMm) * pixelsPerMm));

    /// <summary>Width a feed is drawn with [px].</summary>
    internal static float Width(Feed feed, PanelView view, float least = Theme.LeastLineWidth) =>
        Width(feed.HasContactWidthMm ? feed.ContactWidthMm : null, view.PixelsPerMm, Least(feed.Path, least));

    /// <summary>Width a vent is drawn with [px].</summary>
    internal static float Width(Vent vent, PanelView view, float least = Theme.LeastLineWidth) =>
        Width(vent.HasContactWidthMm ? vent.ContactWidthMm : null, view.PixelsPerMm, Least(vent.Path, least));

    /// <summary>Points of a path on the picture [px].</summary>
    internal static IReadOnlyList<SKPoint> Line(Protocol.V1.Path path, PanelView view) => view.ToPixels(path.Points.Select(ClothArea.Read));

    /// <summary>A feed: a solid bar, or a solid disc for a fitting.</summary>
    internal static void Feed(SKCanvas canvas, IReadOnlyList<SKPoint> line, float width)
    {
        Bar(canvas, line, width + 3, Theme.Paper);
        Bar(canvas, line, width, Theme.Ink);
        Bar(canvas, line, width - 2.4f, Theme.Feed);
    }

    /// <summary>A vent: a hollow bar, or a ring for a fitting; a membrane is crossed by bars.</summary>
    internal static void Vent(SKCanvas canvas, IReadOnlyList<SKPoint> line, float width, bool isMembrane)
    {
        Bar(canvas, line, width + 3, Theme.Paper);
        Bar(canvas, line, width, Theme.Ink);
        Bar(canvas, line, width - 3.6f, Theme.Paper);
        if (isMembrane && line.Count == 1)
        {
            RingBars(canvas, line[0], width);
        }
        else if (isMembrane)
        {
            Bar(canvas, line, width - 3.6f, Theme.Ink, 2, 4);
        }
    }

    /// <summary>A timing mark: a small cross in a white square.</summary>
    internal static void TimingMark(SKCanvas canvas, SKPoint at)
    {
        using var casing = Theme.Stroke(Theme.Paper, 5);
        using var stroke = Theme.Stroke(Theme.Ink, 2);
        foreach (var paint in new[] { casing, stroke })
        {
            canvas.DrawLine(at.X - 5, at.Y - 5, at.X + 5, at.Y + 5, paint);
            canvas.DrawLine(at.X - 5, at.Y + 5, at.X + 5, at.Y - 5, paint);
        }
    }

    /// <summary>The last place to fill: a ringed disc.</summary>
    internal static void LastPlace(SKCanvas canvas, SKPoint at, float size = 1)
    {
        using var white = Theme.Fill(Theme.Paper);
        using var ink = Theme.Fill(Theme.Ink);
        using var ring = Theme.Stroke(Theme.Ink, 2.6f * size);
        canvas.DrawCircle(at, 13 * size, white);
        canvas.DrawCircle(at, 11 * size, ring);
        canvas.DrawCircle(at, 5.2f * size, ink);
    }

    /// <summary>The place where one side stays longest behind the other: a ring with four ticks.</summary>
    internal static void LargestLag(SKCanvas canvas, SKPoint at, float size = 1)
    {
        using var casing = Theme.Stroke(Theme.Paper, 6 * size);
        using var stroke = Theme.Stroke(Theme.Ink, 2.6f * size);
        foreach (var paint in new[] { casing, stroke })
        {
            canvas.DrawCircle(at, 8 * size, paint);
            canvas.DrawLine(at.X - 14 * size, at.Y, at.X - 8 * size, at.Y, paint);
            canvas.DrawLine(at.X + 8 * size, at.Y, at.X + 14 * size, at.Y, paint);
            canvas.DrawLine(at.X, at.Y - 14 * size, at.X, at.Y - 8 * size, paint);
            canvas.DrawLine(at.X, at.Y + 8 * size, at.X, at.Y + 14 * size, paint);
        }
    }

    // Bars, for a dot inside a ring is the sign of the last place; they stick out, for a small ring would swallow them.
    private static void RingBars(SKCanvas canvas, SKPoint at, float width)
    {
        var (apart, reach) = (width * 0.18f, width / 2 + Math.Max(2.5f, width * 0.15f));
        using var casing = Theme.Stroke(Theme.Paper, width * 0.15f + 3);
        using var bar = Theme.Stroke(Theme.Ink, width * 0.15f);
        using var hole = Theme.Fill(Theme.Paper);
        using var ring = Theme.Stroke(Theme.Ink, 1.8f);
        casing.StrokeCap = bar.StrokeCap = SKStrokeCap.Butt;
        Bars(casing, reach + 1.5f);
        canvas.DrawCircle(at, width / 2 - 0.9f, hole);
        canvas.DrawCircle(at, width / 2 - 0.9f, ring);
        Bars(bar, reach);

        void Bars(SKPaint paint, float half)
        {
            canvas.DrawLine(at.X - apart, at.Y - half, at.X - apart, at.Y + half, paint);
            canvas.DrawLine(at.X + apart, at.Y - half, at.X + apart, at.Y + half, paint);
        }
    }

    // A fitting is a dot: it needs more width than a line to be seen.
    private static float Least(Protocol.V1.Path path, float least) => path.Points.Count == 1 ? least * LeastFitting : least;

    private static void Bar(SKCanvas canvas, IReadOnlyList<SKPoint> line, float width, SKColor colour, params float[] dashes)
    {
        if (width <= 0)
        {
            return;
        }

        if (line.Count == 1)
        {
            using var disc = Theme.Fill(colour);
            canvas.DrawCircle(line[0], width / 2, disc);
            return;
        }

        using var stroke = Theme.Stroke(colour, width, dashes);
        stroke.StrokeCap = dashes.Length > 0 ? SKStrokeCap.Butt : SKStrokeCap.Round;
        using var builder = new SKPathBuilder();
        builder.AddPoly([.. line], false);
        using var path = builder.Detach();
        canvas.DrawPath(path, stroke);
    }
}

using InfusionSim.Plots.Styling;
using SkiaSharp;

namespace InfusionSim.Plots.Labels;

/// <summary>Draws labels with their leaders.</summary>
internal static class LabelPainter
{
    /// <summary>Leaders first, then the labels, so that no leader crosses a text.</summary>
    internal static void Draw(SKCanvas canvas, IReadOnlyList<PlacedLabel> labels)
    {
        foreach (var label in labels)
        {
            if (label.Anchor is { } anchor)
            {
                using var casing = Theme.Stroke(Theme.Paper, 4);
                using var leader = Theme.Stroke(Theme.Ink, 1.6f);
                var start = Towards(anchor, label.Box.Centre, label.Strong ? 12 : 6);
                canvas.DrawLine(start, label.Box.Centre, casing);
                canvas.DrawLine(start, label.Box.Centre, leader);
            }
        }

        foreach (var label in labels)
        {
            DrawText(canvas, label);
        }
    }

    private static void DrawText(SKCanvas canvas, PlacedLabel label)
    {
        var (box, style) = (label.Box, label.Strong ? TextStyle.StrongLabel : TextStyle.Label);
        canvas.Save();
        canvas.Translate(box.Centre.X, box.Centre.Y);
        canvas.RotateRadians(box.Angle);
        var pill = new SKRect(-box.HalfWidth, -box.HalfHeight, box.HalfWidth, box.HalfHeight);
        using var ground = Theme.Fill(label.Strong ? Theme.Paper : Theme.Paper.WithAlpha(225));
        Pill.Draw(canvas, pill, 5, ground);
        if (label.Strong)
        {
            using var border = Theme.Stroke(Theme.Ink, 1.6f);
            Pill.Draw(canvas, pill, 5, border);
        }

        style.Draw(canvas, label.Text, 0, 0, Theme.Ink, SKTextAlign.Center);
        canvas.Restore();
    }

    private static SKPoint Towards(SKPoint from, SKPoint to, float distance)
    {
        var chord = to - from;
        var length = Math.Max(chord.Length, 1e-3f);
        return new SKPoint(from.X + chord.X * distance / length, from.Y + chord.Y * distance / length);
    }
}

using InfusionSim.Plots.Styling;
using SkiaSharp;

namespace InfusionSim.Plots.Keys;

/// <summary>A bar of colour classes with the round value at each border.</summary>
internal static class ClassBar
{
    /// <summary>Height of the bar with its texts [px].</summary>
    internal const float Height = 42;

    /// <summary>Draws a bar.</summary>
    /// <param name="canvas">What to draw on.</param>
    /// <param name="box">Where the bar and its texts go [px].</param>
    /// <param name="heading">What the bar shows, put before it.</param>
    /// <param name="classes">Colour of each class, in order.</param>
    /// <param name="borders">Text at each border between two classes.</param>
    /// <param name="first">Text at the start.</param>
    /// <param name="last">Text at the end.</param>
    internal static void Draw(
        SKCanvas canvas, SKRect box, string heading, IReadOnlyList<SKColor> classes, IReadOnlyList<string> borders, string first, string last)
    {
        var style = TextStyle.Axis;
        TextStyle.StrongLabel.Draw(canvas, heading, box.Left, box.Top + 9, Theme.Ink);
        var left = box.Left + TextStyle.StrongLabel.Measure(heading) + 18;
        var step = (box.Right - left) / classes.Count;
        for (var i = 0; i < classes.Count; i++)
        {
            using var fill = Theme.Fill(classes[i]);
            canvas.DrawRect(left + i * step, box.Top, step, 18, fill);
        }

        using var line = Theme.Stroke(Theme.Ink, 1.2f);
        canvas.DrawRect(left, box.Top, box.Right - left, 18, line);
        for (var i = 1; i < classes.Count; i++)
        {
            canvas.DrawLine(left + i * step, box.Top, left + i * step, box.Top + 18, line);
        }

        var taken = box.Right - style.Measure(last) - 14;
        style.Draw(canvas, last, box.Right, box.Top + 29, Theme.Ink, SKTextAlign.Right);
        var free = left;
        if (first.Length > 0)
        {
            style.Draw(canvas, first, left, box.Top + 29, Theme.Ink);
            free = left + style.Measure(first) + 8;
        }

        for (var i = 0; i < borders.Count; i++)
        {
            var (x, half) = (left + (i + 1) * step, style.Measure(borders[i]) / 2);
            if (x - half >= free && x + half <= taken)
            {
                style.Draw(canvas, borders[i], x, box.Top + 29, Theme.Ink, SKTextAlign.Center);
                free = x + half + 8;
            }
        }
    }
}

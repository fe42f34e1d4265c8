using InfusionSim.Plots.Styling;
using InfusionSim.Protocol.V1;
using InfusionSim.Plots.Words;
using SkiaSharp;

namespace InfusionSim.Plots.Keys;

/// <summary>The top of a picture: title, outcome badge, one sentence.</summary>
internal static class Header
{
    private const float BadgeHeight = 30;

    /// <summary>Height of a header [px].</summary>
    internal static float Height(string sentence, float width) =>
        Theme.Margin + BadgeHeight + 8 + TextStyle.Caption.Wrap(sentence, width).Count * TextStyle.Caption.LineHeight + 8;

    /// <summary>Draws a header.</summary>
    internal static void Draw(SKCanvas canvas, string title, Outcome? outcome, string sentence, float left, float width)
    {
        var y = Theme.Margin + BadgeHeight / 2;
        var badge = outcome is { } known ? Badge(canvas, known, left + width, y) : 0;
        TextStyle.Title.Draw(canvas, Shorten(title, width - badge - 16), left, y, Theme.Ink);
        y += BadgeHeight / 2 + 8;
        foreach (var line in TextStyle.Caption.Wrap(sentence, width))
        {
            y += TextStyle.Caption.LineHeight;
            TextStyle.Caption.Draw(canvas, line, left, y - TextStyle.Caption.LineHeight / 2, Theme.Ink);
        }
    }

    /// <summary>Draws the badge of an outcome, its right end at a place; black on white when it fills, white on black when not.</summary>
    /// <returns>Its width [px].</returns>
    internal static float Badge(SKCanvas canvas, Outcome outcome, float right, float y)
    {
        var text = ForecastText.Badge(outcome);
        var style = TextStyle.StrongLabel;
        var width = BadgeWidth(outcome);
        var box = new SKRect(right - width, y - BadgeHeight / 2 + 2, right, y + BadgeHeight / 2 - 2);
        var isGood = outcome == Outcome.Fills;
        using var fill = Theme.Fill(isGood ? Theme.Paper : Theme.Ink);
        using var border = Theme.Stroke(Theme.Ink, 2);
        Pill.Draw(canvas, box, 13, fill);
        Pill.Draw(canvas, box, 13, border);
        style.Draw(canvas, text, right - width / 2, y, isGood ? Theme.Ink : Theme.Paper, SKTextAlign.Center);
        return width;
    }

    /// <summary>Width of the badge of an outcome [px].</summary>
    internal static float BadgeWidth(Outcome outcome) => TextStyle.StrongLabel.Measure(ForecastText.Badge(outcome)) + 24;

    /// <summary>A title cut to a width, with dots where it was cut.</summary>
    internal static string Shorten(string title, float width, TextStyle? style = null)
    {
        style ??= TextStyle.Title;
        var text = title;
        while (text.Length > 1 && style.Measure(text) > width)
        {
            text = text.TrimEnd('…')[..^1].TrimEnd() + "…";
        }

        return text;
    }
}

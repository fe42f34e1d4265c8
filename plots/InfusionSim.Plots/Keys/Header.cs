using InfusionSim.Plots.Styling;
using SkiaSharp;

namespace InfusionSim.Plots.Keys;

/// <summary>The top of a picture: title, outcome badge, one sentence.</summary>
internal static class Header
{
    /// <summary>Height of a header [px].</summary>
    internal static float Height(string sentence, float width) =>
        Theme.Margin + Badge.Height + 8 + TextStyle.Caption.Wrap(sentence, width).Count * TextStyle.Caption.LineHeight + 14;

    /// <summary>Draws a header.</summary>
    internal static void Draw(SKCanvas canvas, string title, Badge? badge, string sentence, float left, float width)
    {
        var y = Theme.Margin + Badge.Height / 2;
        var taken = badge?.Draw(canvas, left + width, y) ?? 0;
        TextStyle.Title.Draw(canvas, Shorten(title, width - taken - 16), left, y, Theme.Ink);
        y += Badge.Height / 2 + 8;
        foreach (var line in TextStyle.Caption.Wrap(sentence, width))
        {
            y += TextStyle.Caption.LineHeight;
            TextStyle.Caption.Draw(canvas, line, left, y - TextStyle.Caption.LineHeight / 2, Theme.Ink);
        }
    }

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

using System.Text.RegularExpressions;
using SkiaSharp;

namespace InfusionSim.Plots.Styling;

/// <summary>Letters of one size and weight: measures and draws them.</summary>
/// <param name="Size">Height of the letters [px].</param>
/// <param name="Strong">Whether the letters are heavy.</param>
internal sealed partial record TextStyle(float Size, bool Strong = false)
{
    private const char Together = '\u00A0';

    /// <summary>Letters of titles.</summary>
    internal static readonly TextStyle Title = new(Theme.TitleSize, true);

    /// <summary>Letters of captions.</summary>
    internal static readonly TextStyle Caption = new(Theme.CaptionSize);

    /// <summary>Letters on lines and in keys.</summary>
    internal static readonly TextStyle Label = new(Theme.LabelSize);

    /// <summary>Heavy letters on lines and in callouts.</summary>
    internal static readonly TextStyle StrongLabel = new(Theme.LabelSize, true);

    /// <summary>Letters of ticks.</summary>
    internal static readonly TextStyle Axis = new(Theme.AxisSize);

    /// <summary>Height of one line of text [px].</summary>
    internal float LineHeight => Size * 1.28f;

    /// <summary>Width of a text [px].</summary>
    internal float Measure(string text)
    {
        using var font = NewFont();
        return font.MeasureText(text);
    }

    /// <summary>Draws a text with its left end, middle or right end at x and the middle of its lower-case letters at y.</summary>
    internal void Draw(SKCanvas canvas, string text, float x, float y, SKColor colour, SKTextAlign align = SKTextAlign.Left)
    {
        using var font = NewFont();
        using var paint = Theme.Fill(colour);
        var left = align switch
        {
            SKTextAlign.Center => x - font.MeasureText(text) / 2,
            SKTextAlign.Right => x - font.MeasureText(text),
            _ => x,
        };
        canvas.DrawText(text, left, y + Size * 0.33f, SKTextAlign.Left, font, paint);
    }

    /// <summary>Breaks a text into lines that are no wider than a width [px].</summary>
    internal IReadOnlyList<string> Wrap(string text, float width)
    {
        using var font = NewFont();
        var lines = new List<string>();
        var line = "";
        foreach (var word in NumberBeforeUnit().Replace(text, "$1" + Together).Split(' ').Select(part => part.Replace(Together, ' ')))
        {
            var longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length > 0 && font.MeasureText(longer) > width)
            {
                lines.Add(line);
                longer = word;
            }

            line = longer;
        }

        lines.Add(line);
        return lines;
    }

    // A number and its unit stay on one line.
    [GeneratedRegex(@"(\d) (?=(?:s|min|h|mm|mm²|cm²|m²|cm³|l|g|kg|mbar|%)(?!\w))")]
    private static partial Regex NumberBeforeUnit();

    private SKFont NewFont() => new(Strong ? Fonts.Strong : Fonts.Regular, Size)
    {
        Edging = SKFontEdging.Antialias,
        Hinting = SKFontHinting.None,
        Subpixel = true,
    };
}

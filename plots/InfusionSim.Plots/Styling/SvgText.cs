using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;

namespace InfusionSim.Plots.Styling;

/// <summary>Makes the texts of an SVG file look right without the shipped font too.</summary>
/// <remarks>
/// The drawing library places every letter by itself. A viewer with another font would then space words unevenly or, if it knows no such places, run over;
/// one place and one length let it fit its own letters into the same room.
/// </remarks>
internal static partial class SvgText
{
    private const string Families = $"'{Fonts.Family}', 'Source Sans Pro', 'Open Sans', 'Segoe UI', Arial, sans-serif";

    /// <summary>The same file with tidy texts.</summary>
    internal static string Tidy(string svg) => TextElement().Replace(svg, match => Tidy(match.Groups["attributes"].Value, match.Groups["text"].Value));

    private static string Tidy(string attributes, string text)
    {
        var given = Attribute().Matches(attributes).ToDictionary(match => match.Groups["name"].Value, match => match.Groups["value"].Value);
        var isStrong = given.ContainsKey("font-weight");
        var size = float.Parse(given["font-size"], CultureInfo.InvariantCulture);
        var length = new TextStyle(size, isStrong).Measure(WebUtility.HtmlDecode(text));
        given["x"] = First(given["x"]);
        given["y"] = First(given["y"]);
        given["font-family"] = Families;
        if (isStrong)
        {
            given["font-weight"] = "600";
        }

        given["textLength"] = length.ToString("0.##", CultureInfo.InvariantCulture);
        given["lengthAdjust"] = "spacingAndGlyphs";
        return $"<text {string.Join(" ", given.Select(pair => $"{pair.Key}=\"{pair.Value}\""))}>{text}</text>";
    }

    private static string First(string places) => places.Split(',')[0].Trim();

    [GeneratedRegex(@"<text (?<attributes>[^>]*)>\s*(?<text>.*?)\s*</text>", RegexOptions.Singleline)]
    private static partial Regex TextElement();

    [GeneratedRegex("(?<name>[\\w-]+)=\"(?<value>[^\"]*)\"")]
    private static partial Regex Attribute();
}

using InfusionSim.Plots.Styling;
using SkiaSharp;

namespace InfusionSim.Plots.Charts;

/// <summary>How the curves of one resin are drawn, the same in every chart of a picture: a pattern of dashes that a grey print keeps, and a colour.</summary>
/// <remarks>
/// Seven colours that stay apart with every common colour blindness, after Okabe and Ito, "Color Universal Design" (2008), from memory. Six patterns go round
/// beside them, so that no two of forty-two resins are drawn alike.
/// </remarks>
/// <param name="Colour">Colour of the curve.</param>
/// <param name="Dashes">Lengths of dashes and gaps [px]; empty for a whole line.</param>
internal sealed record ResinLineStyle(SKColor Colour, float[] Dashes)
{
    private static readonly SKColor[] Colours =
    [
        new(0x16, 0x22, 0x2B), new(0x00, 0x72, 0xB2), new(0xD5, 0x5E, 0x00), new(0x00, 0x9E, 0x73), new(0xA6, 0x4D, 0x79), new(0xB0, 0x7A, 0x00), new(0x2F, 0x8F, 0xC9),
    ];

    private static readonly float[][] Patterns = [[], [11, 5], [2.5f, 4], [14, 4, 2.5f, 4], [5, 3.5f], [14, 4, 2.5f, 4, 2.5f, 4]];

    /// <summary>The style of the resin at a place in its list.</summary>
    /// <param name="index">Place, from 0 [-].</param>
    internal static ResinLineStyle Of(int index) => new(Colours[index % Colours.Length], Patterns[index % Patterns.Length]);

    /// <summary>The stroke of the curve.</summary>
    /// <param name="width">Width [px].</param>
    internal SKPaint Stroke(float width) => Theme.Stroke(Colour, width, Dashes);
}

using SkiaSharp;

namespace InfusionSim.Plots.Styling;

/// <summary>Colours, line widths and text sizes of every picture, in one place.</summary>
/// <remarks>Meaning never hangs on colour alone: feeds are solid and vents hollow, dry spots are hatched, the last place has its own sign and words.</remarks>
internal static class Theme
{
    /// <summary>Width of a picture that shows one panel [px].</summary>
    internal const int PictureWidth = 900;

    /// <summary>Blank border round a picture [px].</summary>
    internal const float Margin = 20;

    /// <summary>Height of a title's letters [px].</summary>
    internal const float TitleSize = 24;

    /// <summary>Height of a caption's letters [px].</summary>
    internal const float CaptionSize = 16.5f;

    /// <summary>Height of the letters on lines, in callouts and in keys [px].</summary>
    internal const float LabelSize = 15;

    /// <summary>Height of the letters of axes [px].</summary>
    internal const float AxisSize = 13;

    /// <summary>Width of an isochrone [px].</summary>
    internal const float IsochroneWidth = 1.3f;

    /// <summary>Width of the cloth's outline [px].</summary>
    internal const float OutlineWidth = 2;

    /// <summary>Least width a feed or vent is drawn with [px]; wider ones show their true width.</summary>
    internal const float LeastLineWidth = 7;

    /// <summary>Text and strong lines.</summary>
    internal static readonly SKColor Ink = new(0x16, 0x22, 0x2B);

    /// <summary>Secondary text, ticks.</summary>
    internal static readonly SKColor Quiet = new(0x55, 0x64, 0x6E);

    /// <summary>Faint lines: zone borders, grids.</summary>
    internal static readonly SKColor Faint = new(0xB9, 0xC3, 0xCA);

    /// <summary>The picture's ground.</summary>
    internal static readonly SKColor Paper = SKColors.White;

    /// <summary>Cloth that the resin never reaches.</summary>
    internal static readonly SKColor BareCloth = new(0xEE, 0xEA, 0xE2);

    /// <summary>Resin in pictures that do not show times.</summary>
    internal static readonly SKColor Resin = new(0x2C, 0x7F, 0x93);

    /// <summary>Body of a feed.</summary>
    internal static readonly SKColor Feed = new(0xC2, 0x3B, 0x22);

    /// <summary>A stroke that scales with nothing.</summary>
    internal static SKPaint Stroke(SKColor colour, float width, params float[] dashes) => new()
    {
        Style = SKPaintStyle.Stroke,
        Color = colour,
        StrokeWidth = width,
        StrokeCap = dashes.Length == 0 ? SKStrokeCap.Round : SKStrokeCap.Butt,
        StrokeJoin = SKStrokeJoin.Round,
        IsAntialias = true,
        PathEffect = dashes.Length == 0 ? null : SKPathEffect.CreateDash(dashes, 0),
    };

    /// <summary>A plain fill.</summary>
    internal static SKPaint Fill(SKColor colour) => new() { Style = SKPaintStyle.Fill, Color = colour, IsAntialias = true };
}

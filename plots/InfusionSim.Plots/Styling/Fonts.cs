using ScottPlot;
using SkiaSharp;

namespace InfusionSim.Plots.Styling;

/// <summary>The text font of every picture, shipped inside the assembly so that a machine without fonts draws the same letters.</summary>
/// <remarks>Source Sans 3, SIL Open Font License 1.1; the licence lies beside the font files and is embedded with them.</remarks>
internal static class Fonts
{
    /// <summary>The family's name, as axes and SVG files spell it.</summary>
    internal const string Family = "Source Sans 3";

    private static readonly Lazy<SKTypeface> RegularFace = new(() => Load("SourceSans3-Regular.ttf"));
    private static readonly Lazy<SKTypeface> StrongFace = new(() => Load("SourceSans3-Semibold.ttf"));
    private static readonly Lazy<bool> Registered = new(Register);

    /// <summary>Font of plain text.</summary>
    internal static SKTypeface Regular => RegularFace.Value;

    /// <summary>Font of titles and of words that must be seen first.</summary>
    internal static SKTypeface Strong => StrongFace.Value;

    /// <summary>Makes the axes of every chart use the shipped font; safe to call often.</summary>
    internal static void UseOnAxes() => _ = Registered.Value;

    private static bool Register()
    {
        ScottPlot.Fonts.FontResolvers.Insert(0, new Resolver());
        ScottPlot.Fonts.Default = Family;
        return true;
    }

    private static SKTypeface Load(string resource)
    {
        using var stream = typeof(Fonts).Assembly.GetManifestResourceStream(resource)
            ?? throw new InvalidOperationException($"The font {resource} is missing from the assembly; build the project again.");
        using var data = SKData.Create(stream);
        return SKTypeface.FromData(data)
            ?? throw new InvalidOperationException($"The font {resource} cannot be read; build the project again.");
    }

    private sealed class Resolver : IFontResolver
    {
        public SKTypeface? CreateTypeface(string fontName, bool bold, bool italic) => Pick(fontName, bold);

        public SKTypeface? CreateTypeface(string fontName, FontWeight weight, FontSlant slant, FontSpacing spacing) =>
            Pick(fontName, weight >= FontWeight.SemiBold);

        private static SKTypeface? Pick(string fontName, bool bold) =>
            fontName != Family ? null : bold ? Strong : Regular;
    }
}

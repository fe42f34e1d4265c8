using System.Globalization;
using System.Security;
using System.Text;
using System.Text.RegularExpressions;
using InfusionSim.Plots.Styling;
using SkiaSharp;

namespace InfusionSim.Plots;

/// <summary>A finished picture: saved as PNG or SVG, and said in one sentence for whoever cannot see it.</summary>
public sealed partial class Picture
{
    private readonly Action<SKCanvas> _paint;

    internal Picture(int width, int height, string sentence, Action<SKCanvas> paint)
    {
        Width = width;
        Height = height;
        Sentence = sentence;
        _paint = paint;
    }

    /// <summary>Width at scale 1 [px].</summary>
    public int Width { get; }

    /// <summary>Height at scale 1 [px].</summary>
    public int Height { get; }

    /// <summary>What the picture says, in words: the text to show where the picture cannot be seen.</summary>
    public string Sentence { get; }

    /// <summary>The picture as the content of a PNG file.</summary>
    /// <param name="scale">Pixels of the file per pixel of the picture [-], 0.25 to 8.</param>
    public byte[] PngBytes(float scale = 1)
    {
        using var bitmap = Render(scale);
        using var pixels = bitmap.PeekPixels();
        using var data = pixels.Encode(new SKPngEncoderOptions(SKPngEncoderFilterFlags.AllFilters, 9));
        return data?.ToArray() ?? throw new InvalidOperationException("The picture could not be encoded as PNG.");
    }

    /// <summary>The picture as the content of an SVG file; its texts stay texts.</summary>
    public byte[] SvgBytes()
    {
        using var stream = new MemoryStream();
        using (var canvas = SKSvgCanvas.Create(new SKRect(0, 0, Width, Height), stream))
        {
            Paint(canvas);
        }

        return Encoding.UTF8.GetBytes(Finish(Encoding.UTF8.GetString(stream.ToArray())));
    }

    /// <summary>Saves a PNG file.</summary>
    /// <param name="path">Where to; its folder must exist.</param>
    /// <param name="scale">Pixels of the file per pixel of the picture [-], 0.25 to 8.</param>
    public void SavePng(string path, float scale = 1) => File.WriteAllBytes(path, PngBytes(scale));

    /// <summary>Saves an SVG file.</summary>
    /// <param name="path">Where to; its folder must exist.</param>
    public void SaveSvg(string path) => File.WriteAllBytes(path, SvgBytes());

    /// <summary>Saves a PNG or an SVG file, by the ending of its name.</summary>
    /// <param name="path">Where to; its folder must exist.</param>
    /// <exception cref="ArgumentException">When the name ends neither in .png nor in .svg.</exception>
    public void Save(string path)
    {
        switch (Path.GetExtension(path).ToUpperInvariant())
        {
            case ".PNG": SavePng(path); break;
            case ".SVG": SaveSvg(path); break;
            default: throw new ArgumentException($"'{path}' ends neither in .png nor in .svg; name one of the two.", nameof(path));
        }
    }

    // A hundredth of a pixel is finer than any screen or printer; the long numbers would double the file.
    private static string Shorten(string number) => Math.Round(double.Parse(number, CultureInfo.InvariantCulture), 2).ToString(CultureInfo.InvariantCulture);

    // The library counts names over all files it has written; each file shall count its own, to be the same each time.
    private static string Renumber(Dictionary<string, string> names, string name)
    {
        if (!names.TryGetValue(name, out var own))
        {
            names[name] = own = $"cut{names.Count + 1}";
        }

        return own;
    }

    [GeneratedRegex(@"\bcl_[0-9a-f]+\b")]
    private static partial Regex ClipName();

    [GeneratedRegex(@"-?\d+\.\d{3,}(e-?\d+)?")]
    private static partial Regex LongNumber();

    internal SKBitmap Render(float scale)
    {
        if (!(scale is >= 0.25f and <= 8))
        {
            throw new ArgumentOutOfRangeException(nameof(scale), scale, "The scale of a picture must lie between 0.25 and 8.");
        }

        var bitmap = new SKBitmap(new SKImageInfo((int)MathF.Round(Width * scale), (int)MathF.Round(Height * scale), SKColorType.Rgba8888, SKAlphaType.Opaque));
        using var canvas = new SKCanvas(bitmap);
        canvas.Scale(scale);
        Paint(canvas);
        return bitmap;
    }

    private void Paint(SKCanvas canvas)
    {
        using var paper = Theme.Fill(Theme.Paper);
        canvas.DrawRect(0, 0, Width, Height, paper);
        _paint(canvas);
    }

    private string Finish(string svg)
    {
        var head = string.Create(
            CultureInfo.InvariantCulture,
            $"""viewBox="0 0 {Width} {Height}" role="img"><title>{SecurityElement.Escape(Sentence)}</title>""");
        var open = svg.IndexOf("<svg", StringComparison.Ordinal);
        var close = svg.IndexOf('>', open);
        var names = new Dictionary<string, string>();
        var body = LongNumber().Replace(svg[(close + 1)..], number => Shorten(number.Value));
        return svg[..close] + " " + head + SvgText.Tidy(ClipName().Replace(body, clip => Renumber(names, clip.Value)));
    }
}

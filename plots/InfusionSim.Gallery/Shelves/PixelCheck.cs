using SkiaSharp;

namespace InfusionSim.Gallery.Shelves;

/// <summary>Compares two pictures as an eye would.</summary>
internal static class PixelCheck
{
    // A quarter of the range of grey is a difference that an eye sees; a line that moved by a tenth of a pixel stays below it.
    private const int VisibleStep = 64;
    private const double MostVisibleShare = 0.001;

    /// <summary>What an eye would see; null for nothing.</summary>
    internal static string? Difference(byte[] first, byte[] second)
    {
        using var before = SKBitmap.Decode(first);
        using var after = SKBitmap.Decode(second);
        if (before is null || after is null)
        {
            return "cannot be read as a picture";
        }

        if (before.Width != after.Width || before.Height != after.Height)
        {
            return $"is {before.Width} × {before.Height} px, drawn anew {after.Width} × {after.Height} px";
        }

        var (left, right) = (before.Pixels, after.Pixels);
        var visible = left.Where((pixel, i) => Step(pixel, right[i]) > VisibleStep).Count();
        return visible <= MostVisibleShare * left.Length ? null : $"looks different in {visible} of {left.Length} pixels";
    }

    private static int Step(SKColor a, SKColor b) =>
        Math.Max(Math.Abs(a.Red - b.Red), Math.Max(Math.Abs(a.Green - b.Green), Math.Abs(a.Blue - b.Blue)));
}

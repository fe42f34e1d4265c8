using SkiaSharp;

namespace InfusionSim.Plots;

/// <summary>Compares two pictures as an eye would.</summary>
public static class PictureDifference
{
    // A quarter of the range of grey is a difference that an eye sees; a line that moved by a tenth of a pixel stays below it.
    private const int VisibleStep = 64;
    private const double MostVisibleShare = 0.001;

    /// <summary>What an eye would see, in words; null for nothing.</summary>
    /// <param name="first">Content of a PNG or WebP file; of an animated one its first still is looked at.</param>
    /// <param name="second">Content of another.</param>
    public static string? Find(byte[] first, byte[] second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
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

using SkiaSharp;

namespace InfusionSim.Plots;

/// <summary>A picture that moves: an animated WebP file that every browser plays, over and over.</summary>
public sealed class AnimatedPicture
{
    private readonly Picture[] _frames;
    private readonly int[] _durationsMs;

    internal AnimatedPicture(string sentence, IReadOnlyList<Picture> frames, IReadOnlyList<int> durationsMs)
    {
        Sentence = sentence;
        _frames = [.. frames];
        _durationsMs = [.. durationsMs];
    }

    /// <summary>What the picture says, in words.</summary>
    public string Sentence { get; }

    /// <summary>Its stills, in order.</summary>
    public IReadOnlyList<Picture> Frames => _frames;

    /// <summary>The picture as the content of an animated WebP file.</summary>
    /// <param name="scale">Pixels of the file per pixel of the picture [-], 0.25 to 8.</param>
    public byte[] WebpBytes(float scale = 1)
    {
        var bitmaps = _frames.Select(frame => frame.Render(scale)).ToArray();
        try
        {
            var frames = bitmaps.Select((bitmap, i) => new SKWebpEncoderFrame(bitmap.PeekPixels(), TimeSpan.FromMilliseconds(_durationsMs[i]))).ToArray();
            using var data = SKWebpEncoder.EncodeAnimated(frames, new SKWebpEncoderOptions(SKWebpEncoderCompression.Lossy, 70));
            return data?.ToArray() ?? throw new InvalidOperationException("The animated picture could not be encoded.");
        }
        finally
        {
            Array.ForEach(bitmaps, bitmap => bitmap.Dispose());
        }
    }

    /// <summary>Saves an animated WebP file.</summary>
    /// <param name="path">Where to; its folder must exist.</param>
    /// <exception cref="ArgumentException">When the name does not end in .webp.</exception>
    public void Save(string path)
    {
        if (!Path.GetExtension(path).Equals(".webp", StringComparison.OrdinalIgnoreCase))
        {
            throw new ArgumentException($"'{path}' does not end in .webp; name it so.", nameof(path));
        }

        File.WriteAllBytes(path, WebpBytes());
    }
}

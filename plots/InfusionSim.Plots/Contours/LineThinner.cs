using SkiaSharp;

namespace InfusionSim.Plots.Contours;

/// <summary>Leaves out points that nobody would miss, so that files stay small.</summary>
/// <remarks>Douglas and Peucker, The Canadian Cartographer 10 (1973) 112 (from memory).</remarks>
internal static class LineThinner
{
    /// <summary>A line with fewer points, nowhere farther off than the tolerance.</summary>
    /// <param name="line">Points in order [px].</param>
    /// <param name="tolerance">Largest distance [px].</param>
    internal static List<SKPoint> Thin(IReadOnlyList<SKPoint> line, float tolerance)
    {
        if (line.Count < 3)
        {
            return [.. line];
        }

        var keep = new bool[line.Count];
        keep[0] = keep[^1] = true;
        var open = new Stack<(int From, int To)>([(0, line.Count - 1)]);
        while (open.TryPop(out var part))
        {
            var (worst, at) = Farthest(line, part.From, part.To);
            if (worst > tolerance)
            {
                keep[at] = true;
                open.Push((part.From, at));
                open.Push((at, part.To));
            }
        }

        return [.. line.Where((_, i) => keep[i])];
    }

    private static (float Distance, int At) Farthest(IReadOnlyList<SKPoint> line, int from, int to)
    {
        var (a, b) = (line[from], line[to]);
        var chord = b - a;
        var length = chord.Length;
        var (worst, at) = (-1f, from);
        for (var i = from + 1; i < to; i++)
        {
            var offset = line[i] - a;
            var distance = length < 1e-6f ? offset.Length : Math.Abs(chord.X * offset.Y - chord.Y * offset.X) / length;
            if (distance > worst)
            {
                (worst, at) = (distance, i);
            }
        }

        return (worst, at);
    }
}

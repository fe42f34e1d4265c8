namespace InfusionSim.Physics.Lines;

/// <summary>Stretches of a straight edge that may overlap, counted once.</summary>
internal sealed class Intervals
{
    private readonly List<(double From, double To)> parts = [];

    public void Add(double from, double to)
    {
        if (to > from) parts.Add((from, to));
    }

    /// <summary>The stretches in order, joined where they overlap or touch.</summary>
    public IReadOnlyList<(double From, double To)> Joined()
    {
        var joined = new List<(double From, double To)>();
        foreach ((double from, double to) in parts.Order())
        {
            if (joined.Count > 0 && from <= joined[^1].To) joined[^1] = (joined[^1].From, Math.Max(joined[^1].To, to));
            else joined.Add((from, to));
        }

        return joined;
    }

    /// <summary>What the stretches leave free between two ends.</summary>
    /// <param name="from">Lower end.</param>
    /// <param name="to">Upper end.</param>
    public IEnumerable<(double From, double To)> Gaps(double from, double to)
    {
        double at = from;
        foreach ((double start, double end) in Joined())
        {
            if (start > at) yield return (at, Math.Min(start, to));
            at = Math.Max(at, end);
        }

        if (at < to) yield return (at, to);
    }
}

namespace InfusionSim.Physics.Flow;

/// <summary>When the front passes each node, written down stretch by stretch of a fill.</summary>
internal sealed class FrontTrack
{
    private readonly List<FillTally> _tallies = [];
    private readonly List<(double Clock, int Node, double Arrival, double Full)> _opened = [];

    /// <summary>Makes a track on which nothing has been passed.</summary>
    /// <param name="problem">The panel as numbers.</param>
    public FrontTrack(FillProblem problem)
    {
        Arrival = [.. problem.PoreVolume.Select(static volume => volume > 0 ? double.PositiveInfinity : double.NaN)];
        Full = [.. Arrival];
    }

    private FrontTrack(FrontTrack other)
    {
        Arrival = [.. other.Arrival];
        Full = [.. other.Full];
        _tallies = [.. other._tallies];
    }

    /// <summary>Drive clock at which each node is half full [-]; +∞ where the front has not come, NaN where there is nothing to fill. [nodes].</summary>
    public double[] Arrival { get; }

    /// <summary>Drive clock at which each node is full [-]; +∞ and NaN likewise. [nodes].</summary>
    public double[] Full { get; }

    /// <summary>What the states computed on the way add up to, in order of the clock.</summary>
    public IReadOnlyList<FillTally> Tallies => [.. _tallies.OrderBy(static tally => tally.Clock)];

    /// <summary>Notes what a state adds up to.</summary>
    /// <param name="tally">The sums.</param>
    public void Add(FillTally tally) => _tallies.Add(tally);

    /// <summary>Takes a node as dry again, or as not quite full any more.</summary>
    /// <param name="node">Index of the node.</param>
    /// <param name="saturation">How full it is [-].</param>
    /// <param name="clock">Drive clock then [-].</param>
    public void Open(int node, double saturation, double clock)
    {
        _opened.Add((clock, node, Arrival[node], Full[node]));
        if (saturation < 1) Full[node] = double.PositiveInfinity;
        if (saturation < 0.5) Arrival[node] = double.PositiveInfinity;
    }

    /// <summary>The track as it stood at an earlier clock.</summary>
    /// <param name="clock">Drive clock [-].</param>
    public FrontTrack Until(double clock)
    {
        FrontTrack earlier = new(this);
        foreach ((double at, int node, double arrival, double full) in Enumerable.Reverse(_opened))
        {
            if (at <= clock) earlier._opened.Insert(0, (at, node, arrival, full));
            else (earlier.Arrival[node], earlier.Full[node]) = (arrival, full);
        }

        earlier.CutAt(clock);
        return earlier;
    }

    /// <summary>Forgets what lies beyond a clock: from there on things went another way.</summary>
    /// <param name="clock">Drive clock [-].</param>
    public void CutAt(double clock)
    {
        for (int node = 0; node < Arrival.Length; node++)
        {
            if (Arrival[node] > clock) Arrival[node] = double.PositiveInfinity;
            if (Full[node] > clock) Full[node] = double.PositiveInfinity;
        }

        _tallies.RemoveAll(tally => tally.Clock > clock);
    }
}

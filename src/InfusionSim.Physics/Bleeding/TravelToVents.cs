using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Lines;
using InfusionSim.Physics.Network;

namespace InfusionSim.Physics.Bleeding;

/// <summary>How long the resin of each place takes to a vent once the panel is full and the vents stay open.</summary>
/// <remarks>
/// In the full panel the pressure no longer changes on the drive clock. A node of volume C that passes Q hands its resin on to the nodes below it in
/// pressure, so its time to a
/// vent is C/Q and the mean of theirs, weighted with the flow to each. Taken from the lowest pressure (with the weight of the resin, the lowest head)
/// upwards, each node
/// is settled in one sweep, for resin never runs up again. From its middle half of its own time is left. Summed over the feeds, flow times time is
/// the pore volume that is passed through, exactly. Resin that ends in a feed at a lower pressure, or in a gap that is still filling, reaches no vent. Derived.
/// </remarks>
public sealed class TravelToVents
{
    // A node that would need so many times the mean over the panel stands still, for all that anybody could wait for or the pressure is known to.
    private const double StandsStill = 1000;

    private readonly FillProblem problem;
    private readonly double[] pressure, toVent, elsewhere;
    private double through;

    private TravelToVents(FillProblem problem, double[] pressure)
    {
        this.problem = problem;
        this.pressure = pressure;
        int count = pressure.Length;
        (toVent, elsewhere) = (new double[count], new double[count]);
        FromEntry = new double[count];
        FromMiddle = new double[count];
        VentShare = new double[count];
    }

    /// <summary>Drive clock from where resin enters a node to a vent, mean of all that reaches one [-]; +∞ where none does. [nodes].</summary>
    public double[] FromEntry { get; }

    /// <summary>The same from the middle of the node [-]. [nodes].</summary>
    public double[] FromMiddle { get; }

    /// <summary>Share of what passes a node that ends in a vent [-]. [nodes].</summary>
    public double[] VentShare { get; }

    /// <summary>Follows the resin of a full panel.</summary>
    /// <param name="problem">The panel as numbers.</param>
    /// <param name="pressure">Pressure when all is wet [-]; 0 where resin cannot go. [nodes].</param>
    /// <param name="cancellation">Stops the work.</param>
    public static TravelToVents Of(FillProblem problem, double[] pressure, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(pressure);
        TravelToVents travel = new(problem, pressure);
        travel.CollectEnds();
        travel.Sweep(cancellation);
        return travel;
    }

    private void CollectEnds()
    {
        for (int vent = 0; vent < problem.Vents.Count; vent++)
        {
            if (!problem.VentPassesResin[vent]) continue;
            foreach (CellContact contact in problem.Vents[vent].Contacts)
                if (contact.LineNode < 0) toVent[contact.Cell] += contact.Conductance * pressure[contact.Cell];
        }

        foreach (LineEnd drain in problem.Network.Drains) toVent[drain.Node] += drain.Conductance * pressure[drain.Node];
        for (int feed = 0; feed < problem.Feeds.Count; feed++)
        {
            foreach (CellContact contact in problem.Feeds[feed].Contacts)
                if (contact.LineNode < 0) AddBackflow(contact.Cell, contact.Conductance, feed);
        }

        foreach (LineEnd source in problem.Network.Sources) AddBackflow(source.Node, source.Conductance, source.Line);
    }

    private void AddBackflow(int node, double conductance, int feed)
    {
        double flow = conductance * (problem.FeedPressureAt(feed, node) - pressure[node]);
        if (flow > 0) through += flow;
        else elsewhere[node] -= flow;
    }

    private void Sweep(CancellationToken cancellation)
    {
        int[] nodes = [.. Enumerable.Range(0, pressure.Length).Where(node => pressure[node] > 0)];
        double[] heads = [.. nodes.Select(HeadOf)];
        Array.Sort(heads, nodes);
        double volume = nodes.Sum(node => problem.PoreVolume[node]);
        double longest = through > 0 ? StandsStill * volume / through : 0;
        List<NodeNeighbour> neighbours = [];
        Array.Fill(FromEntry, double.PositiveInfinity);
        Array.Fill(FromMiddle, double.PositiveInfinity);
        for (int k = 0; k < nodes.Length; k++)
        {
            if (k % 4096 == 0) cancellation.ThrowIfCancellationRequested();
            Settle(nodes[k], neighbours, longest);
        }
    }

    private void Settle(int node, List<NodeNeighbour> neighbours, double longest)
    {
        double head = HeadOf(node), flow = toVent[node] + elsewhere[node], vented = toVent[node], time = 0;
        problem.Operator.CollectNeighbours(node, neighbours);
        foreach ((int other, double conductance) in neighbours)
        {
            double down = conductance * (head - HeadOf(other));
            if (down <= 0) continue;
            flow += down;
            bool isVent = IsBehindVent(other);
            double share = isVent ? 1 : VentShare[other];
            vented += down * share;
            if (!isVent && share > 0) time += down * share * FromEntry[other];
        }

        double own = problem.PoreVolume[node] / flow;
        if (!(own < longest) || !(vented > 0)) return;
        time = IsBehindVent(node) ? 0 : time / vented;
        VentShare[node] = vented / flow;
        FromEntry[node] = IsBehindVent(node) ? 0 : own + time;
        FromMiddle[node] = IsBehindVent(node) ? 0 : own / 2 + time;
    }

    // Resin that has come out of the cloth into the line of a vent has left the part.
    private bool IsBehindVent(int node) => node >= problem.Operator.CellCount && problem.Network[node].Part is LinePart.Vent or LinePart.VentHose;

    private double HeadOf(int node) => pressure[node] + (problem.Heads?[node] ?? 0);
}

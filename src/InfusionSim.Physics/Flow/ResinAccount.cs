using InfusionSim.Physics.Gravity;
using InfusionSim.Physics.Lines;
using InfusionSim.Physics.Network;

namespace InfusionSim.Physics.Flow;

/// <summary>Where the resin has gone up to one value of the clock: out of the pots, through the lines, into cloth and gaps, out of the vents.</summary>
/// <remarks>
/// What a feed gives to the cloth is kept apart from what stands in its hose and its line, and what a vent takes from what stands in its own.
/// All volumes are read from the flows through contacts and ends, not from what the nodes hold, so that the two can be held against each other.
/// </remarks>
internal sealed class ResinAccount
{
    private ResinAccount(double[] resinIn, double[] resinOut, double[] feedLines, double[] ventLines)
    {
        In = resinIn;
        Out = resinOut;
        FeedLines = feedLines;
        VentLines = ventLines;
    }

    /// <summary>Volume that cloth and gaps have taken from each feed [m³].</summary>
    public double[] In { get; }

    /// <summary>Volume that cloth and gaps have given to each vent [m³].</summary>
    public double[] Out { get; }

    /// <summary>Volume that stands in the hose and line of each feed [m³], without what a primed hose held before.</summary>
    public double[] FeedLines { get; }

    /// <summary>Volume that stands in the line and hose of each vent [m³].</summary>
    public double[] VentLines { get; }

    /// <summary>Volume in laminate and core [m³].</summary>
    public double InPart { get; private init; }

    /// <summary>Volume in mesh and peel ply, which come off the part [m³].</summary>
    public double InMesh { get; private init; }

    /// <summary>Volume in the gaps [m³].</summary>
    public double InGaps { get; private init; }

    /// <summary>Volume drawn from the pots [m³].</summary>
    public double Drawn { get; private init; }

    /// <summary>Volume that has left at the vents' ends [m³].</summary>
    public double Drained { get; private init; }

    /// <summary>Drawn from the pots, less out of the last vent's end, less what stands in between, over what was drawn [-].</summary>
    public double Error { get; private init; }

    /// <summary>Adds up a state.</summary>
    /// <param name="problem">The panel as numbers.</param>
    /// <param name="start">The panel as the stretch of the fill began.</param>
    /// <param name="clock">Drive clock since then [-].</param>
    /// <param name="accumulated">Pressure accumulated since then [-]. [nodes].</param>
    /// <param name="saturation">How full each node is [-]. [nodes].</param>
    /// <param name="lineSupply">What feeds have given each line node, less what vents took from it [m³]; null to take it from the pressures, as long as no line
    /// conducts so well that their differences are lost to rounding. [line nodes].</param>
    /// <param name="gravity">What weight moves; null for none.</param>
    public static ResinAccount Of(
        FillProblem problem, FillStart start, double clock, double[] accumulated, double[] saturation, double[]? lineSupply = null, GravityLoad? gravity = null)
    {
        FeedNetwork network = problem.Network;
        double[] resinIn = [.. start.ResinIn], resinOut = [.. start.ResinOut];
        double drawn = start.Drawn;
        for (int feed = 0; feed < resinIn.Length; feed++)
        {
            foreach (CellContact contact in problem.Feeds[feed].Contacts)
            {
                double flow = contact.Conductance * (Before(feed, contact.LineNode, contact.Cell) - accumulated[contact.Cell]);
                resinIn[feed] += flow;
                if (contact.LineNode < 0) drawn += flow;
            }
        }

        foreach (GapContact contact in network.FedGaps) resinIn[contact.Line] += contact.Conductance * (Before(contact.Line, contact.LineNode, contact.GapNode) - accumulated[contact.GapNode]);
        drawn += lineSupply is null
            ? network.Sources.Sum(source => source.Conductance * (Before(source.Line, -1, source.Node) - accumulated[source.Node]))
            : DrawnInto(network, lineSupply, accumulated);
        for (int vent = 0; vent < resinOut.Length; vent++)
        {
            if (problem.VentPassesResin[vent]) resinOut[vent] += OutOf(problem, vent, accumulated, Lift);
        }

        double drained = start.Drained + network.Drains.Sum(drain => drain.Conductance * accumulated[drain.Node]);
        for (int vent = 0; vent < resinOut.Length; vent++)
        {
            if (problem.VentPassesResin[vent]) drained += problem.Vents[vent].Contacts.Where(static contact => contact.LineNode < 0).Sum(contact => contact.Conductance * accumulated[contact.Cell]);
        }

        double[] feedLines = new double[resinIn.Length], ventLines = new double[resinOut.Length];
        double part = 0, mesh = 0, gaps = 0;
        int layer = problem.Operator.CellsInLayer;
        for (int first = 0; first < problem.Operator.CellCount; first += layer)
        {
            double held = 0;
            for (int node = first; node < first + layer; node++) held += saturation[node] * problem.PoreVolume[node];
            if (problem.StaysInPart(first)) part += held;
            else mesh += held;
        }

        for (int node = problem.Operator.CellCount; node < problem.Operator.NodeCount; node++)
        {
            double held = saturation[node] * problem.PoreVolume[node];
            LineNode line = network[node];
            if (line.Part == LinePart.Gap) gaps += held;
            else (line.Part is LinePart.Vent or LinePart.VentHose ? ventLines : feedLines)[line.Line] += held;
        }

        return new(resinIn, resinOut, feedLines, ventLines)
        {
            InPart = part,
            InMesh = mesh,
            InGaps = gaps,
            Drawn = drawn,
            Drained = drained,
            Error = drawn > 0 ? Math.Abs(drawn - drained - part - mesh - gaps - feedLines.Sum() - ventLines.Sum()) / drawn : 0,
        };

        double Before(int feed, int lineNode, int node) => lineNode < 0 ? problem.FeedPressureAt(feed, node) * clock : accumulated[lineNode] - Lift(lineNode, node);
        double Lift(int from, int to) => gravity?.AccumulatedLift(from, to, clock) ?? 0;
    }

    // A length of gap may lie between a feed and a vent.
    private static double DrawnInto(FeedNetwork network, double[] lineSupply, double[] accumulated)
    {
        HashSet<int> fed = [.. network.Sources.Select(static source => source.Node)];
        return fed.Sum(node => lineSupply[node - network.FirstNode])
            + network.Drains.Where(drain => fed.Contains(drain.Node)).Sum(drain => drain.Conductance * accumulated[drain.Node]);
    }

    /// <summary>Flow out of cloth and gaps into a vent that passes resin, or volume when the pressures are accumulated ones [m³].</summary>
    /// <param name="problem">The panel as numbers.</param>
    /// <param name="vent">Index of the vent.</param>
    /// <param name="pressure">Pressure of each node [-]. [nodes].</param>
    /// <param name="lift">What the weight of the resin takes from the first node to the second [-]; null where it does not count.</param>
    public static double OutOf(FillProblem problem, int vent, double[] pressure, Func<int, int, double>? lift = null)
    {
        double sum = 0;
        foreach (CellContact contact in problem.Vents[vent].Contacts) sum += contact.Conductance * (pressure[contact.Cell] - Behind(contact.Cell, contact.LineNode));
        foreach (GapContact contact in problem.Network.VentedGaps)
        {
            if (contact.Line == vent) sum += contact.Conductance * (pressure[contact.GapNode] - Behind(contact.GapNode, contact.LineNode));
        }

        return sum;

        double Behind(int node, int lineNode) => lineNode < 0 ? 0 : pressure[lineNode] + (lift?.Invoke(node, lineNode) ?? 0);
    }
}

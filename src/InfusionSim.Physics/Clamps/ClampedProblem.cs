using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Lines;
using InfusionSim.Physics.Network;

namespace InfusionSim.Physics.Clamps;

/// <summary>The panel as numbers while some clamps are shut or throttled.</summary>
/// <remarks>
/// A shut clamp cuts the line off from its pot or catch pot. The line itself stays where it lies: resin runs along it from the places it touches, so a dry feed line that
/// waits for its turn, or a vent line clamped when resin shows, carries resin as an open channel does. A throttled clamp leaves a share f of the hose's conductance: its
/// own resistance is R (1/f − 1) with R that of the hose.
/// </remarks>
internal static class ClampedProblem
{
    /// <summary>Applies clamps to a panel with all clamps open.</summary>
    /// <param name="problem">The panel with all clamps open.</param>
    /// <param name="clamps">How far open each is.</param>
    public static FillProblem Of(FillProblem problem, LineClamps clamps)
    {
        if (clamps.AreAllOpen) return problem;
        FeedNetwork network = problem.Network;
        ClampSeats seats = new(problem);
        LineContact[] feeds = [.. problem.Feeds.Select((line, k) => Rehung(line, clamps.Feeds[k] == 0 ? seats.ShutNodeOf(k, isVent: false) : -1))];
        LineContact[] vents = [.. problem.Vents.Select((line, k) => Rehung(line, clamps.Vents[k] == 0 ? seats.ShutNodeOf(k, isVent: true) : -1))];
        List<LineEnd> sources = [], drains = [];
        List<NodeLink> links = [];
        foreach (LineEnd end in network.Sources) Turn(end, isVent: false, clamps.Feeds, sources);
        foreach (LineEnd end in network.Drains) Turn(end, isVent: true, clamps.Vents, drains);
        foreach (NodeLink link in network.Links)
        {
            int feed = seats.FeedAt(link);
            double conductance = feed < 0 ? link.Conductance : seats.Through(link.Conductance, feed, isVent: false, clamps.Feeds[feed]);
            if (conductance > 0) links.Add(link with { Conductance = conductance });
        }

        FeedNetwork clamped = network with
        {
            Sources = sources,
            Drains = drains,
            Links = links,
            FedGaps = [.. network.FedGaps.Select(gap => HungOn(gap, clamps.Feeds, isVent: false))],
            VentedGaps = [.. network.VentedGaps.Select(gap => HungOn(gap, clamps.Vents, isVent: true))],
        };
        return problem with
        {
            Operator = OperatorOf(problem, feeds, vents, clamped),
            Feeds = feeds,
            Vents = vents,
            Network = clamped,
            VentIsOpen = [.. clamps.Vents.Select(static open => open > 0)],
        };

        void Turn(LineEnd end, bool isVent, IReadOnlyList<double> open, List<LineEnd> kept)
        {
            double conductance = seats.IsAt(end, isVent) ? seats.Through(end.Conductance, end.Line, isVent, open[end.Line]) : end.Conductance;
            if (conductance > 0) kept.Add(end with { Conductance = conductance });
            else if (seats.ShutNodeOf(end.Line, isVent) is >= 0 and int shut) links.Add(new(shut, end.Node, end.Conductance));
        }

        GapContact HungOn(GapContact contact, IReadOnlyList<double> open, bool isVent) =>
            open[contact.Line] == 0 && seats.ShutNodeOf(contact.Line, isVent) is >= 0 and int shut ? contact with { LineNode = shut } : contact;
    }

    private static LineContact Rehung(LineContact line, int node) =>
        node < 0 ? line : line with { Contacts = [.. line.Contacts.Select(contact => contact with { LineNode = node })] };

    private static LatticeOperator OperatorOf(FillProblem problem, LineContact[] feeds, LineContact[] vents, FeedNetwork network)
    {
        LatticeOperator open = problem.Operator, clamped = new(open.Columns, open.Rows, open.Layers, open.LineNodes);
        open.East.CopyTo(clamped.East, 0);
        open.North.CopyTo(clamped.North, 0);
        open.Above.CopyTo(clamped.Above, 0);
        foreach (StencilWay way in open.Ways.Skip(2)) way.Conductance.CopyTo(clamped.Way(way.Right, way.Up).Conductance, 0);
        network.Write(clamped);
        IEnumerable<LineContact> passing = vents.Where((_, k) => problem.VentPassesResin[k]);
        foreach (LineContact line in feeds.Concat(problem.Gaps).Concat(passing)) FillProblemBuilder.Join(line, clamped);
        return clamped;
    }
}

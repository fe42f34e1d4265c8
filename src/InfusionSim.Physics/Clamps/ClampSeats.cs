using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Network;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Clamps;

/// <summary>Where the clamp of each line sits: at the start of its hose, behind the T-piece of a pot that several feeds share.</summary>
/// <param name="problem">The panel with all clamps open.</param>
internal sealed class ClampSeats(FillProblem problem)
{
    private readonly FeedNetwork _network = problem.Network;

    /// <summary>Node in which the contacts of a line meet while it is shut [-]; −1 when its own nodes do.</summary>
    /// <param name="line">Index of the feed or vent.</param>
    /// <param name="isVent">Whether it is a vent.</param>
    public int ShutNodeOf(int line, bool isVent)
    {
        IReadOnlyList<int> nodes = isVent ? _network.ShutVents : _network.ShutFeeds;
        return line < nodes.Count ? nodes[line] : -1;
    }

    /// <summary>Whether the clamp of its line sits where a node hangs on a fixed pressure.</summary>
    /// <param name="end">The end.</param>
    /// <param name="isVent">Whether it hangs on that under the bag.</param>
    public bool IsAt(LineEnd end, bool isVent) => isVent || _network[end.Node].Part != LinePart.PotHose;

    /// <summary>Feed whose clamp sits on a link [-]; −1 for none.</summary>
    /// <param name="link">The link.</param>
    public int FeedAt(NodeLink link)
    {
        LineNode first = _network[link.First], second = _network[link.Second];
        if (first.Part == LinePart.PotHose && second.Part is LinePart.Feed or LinePart.FeedHose) return second.Line;
        if (second.Part == LinePart.PotHose && first.Part is LinePart.Feed or LinePart.FeedHose) return first.Line;
        return -1;
    }

    /// <summary>Conductance of a way through a clamp [m³].</summary>
    /// <param name="conductance">Conductance with the clamp open [m³].</param>
    /// <param name="line">Index of the feed or vent.</param>
    /// <param name="isVent">Whether it is a vent.</param>
    /// <param name="openFraction">How far open it is [-]; below 1 but not shut only on a hose, elsewhere it counts as open.</param>
    public double Through(double conductance, int line, bool isVent, double openFraction)
    {
        if (openFraction is 0 or 1) return conductance * openFraction;
        Hose? hose = isVent ? problem.Panel?.Vents[line].Hose : problem.Panel?.Feeds[line].Hose;
        if (hose is null) return conductance;
        double resistance = hose.Length / Passages.RoundConductance(hose.Bore / 2);
        return 1 / (1 / conductance + resistance * (1 / openFraction - 1));
    }
}

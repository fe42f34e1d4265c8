using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Lines;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Network;

/// <summary>Finds where lines and gaps meet: they cross, one ends at the other, or they run side by side.</summary>
/// <remarks>They meet where they come as near as half the width of the wider one.</remarks>
internal sealed class GapJoints
{
    private readonly Panel panel;
    private readonly NodeChain[] gaps;
    private readonly List<NodeLink> links;

    /// <summary>Makes a finder.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="gaps">Nodes of its gaps.</param>
    /// <param name="links">Links between nodes; changed where lines and gaps meet between two of them.</param>
    public GapJoints(Panel panel, NodeChain[] gaps, List<NodeLink> links)
    {
        this.panel = panel;
        this.gaps = gaps;
        this.links = links;
    }

    /// <summary>Where a line meets gaps; the links to the line are left to the caller.</summary>
    /// <param name="path">Where the line lies.</param>
    /// <param name="contactWidth">Its width [m].</param>
    /// <param name="line">Its index.</param>
    /// <param name="chain">Its nodes; null when its pressure is fixed.</param>
    public List<GapContact> Of(LinePath path, double contactWidth, int line, NodeChain? chain)
    {
        List<GapContact> contacts = [];
        for (int gap = 0; gap < gaps.Length; gap++)
        {
            double reach = Math.Max(contactWidth, panel.Gaps[gap].Width) / 2;
            foreach ((double station, Point2 place) in Meetings(path, panel.Gaps[gap].Path, gaps[gap], reach))
            {
                (int node, double resistance) = OnLine(chain, place);
                foreach ((int gapNode, double conductance) in Branch.Join(links, gaps[gap], station, resistance)) contacts.Add(new(line, node, gapNode, conductance));
            }
        }

        return contacts;
    }

    /// <summary>Links gaps where they meet one another.</summary>
    public void JoinGaps()
    {
        for (int a = 0; a < gaps.Length; a++)
        {
            for (int b = a + 1; b < gaps.Length; b++)
            {
                double reach = Math.Max(panel.Gaps[a].Width, panel.Gaps[b].Width) / 2;
                foreach ((double station, Point2 place) in Meetings(panel.Gaps[a].Path, panel.Gaps[b].Path, gaps[b], reach))
                {
                    (int node, double resistance) = OnLine(gaps[a], place);
                    foreach ((int other, double conductance) in Branch.Join(links, gaps[b], station, resistance)) links.Add(new(node, other, conductance));
                }
            }
        }
    }

    private static (int Node, double Resistance) OnLine(NodeChain? chain, Point2 place)
    {
        if (chain is null) return (-1, 0);
        double station = chain.StationNear(place);
        int node = chain.NodeAt(station);
        return (node, chain.ResistanceTo(station, node, 0));
    }

    // Distance along the gap, and the place on the line.
    private static IEnumerable<(double Station, Point2 Place)> Meetings(LinePath line, LinePath gap, NodeChain chain, double reach)
    {
        Segment[] along = [.. Segment.Between(line.Points).DefaultIfEmpty(new(line.Points[0], line.Points[0]))];
        EdgeFollowing following = EdgeFollowing.ForContactWidth(2 * reach);
        HashSet<int> met = [];
        for (int node = chain.First; node < chain.First + chain.Count; node++)
        {
            double middle = chain.StationOf(node), half = chain.LengthOf(node) / 2;
            Segment stretch = new(chain.At(middle - half), chain.At(middle + half));
            foreach (Segment segment in along)
            {
                if (segment.Length == 0 || stretch.Length == 0 || following.Along(segment, stretch, 0) is not (double from, double to)) continue;
                if ((to - from) * segment.Length > half && met.Add(node)) yield return (middle, segment.At((from + to) / 2));
            }
        }

        foreach (Segment segment in along)
        {
            double start = 0;
            foreach (Segment stretch in Segment.Between(gap.Points))
            {
                (double onLine, double onGap) = segment.SharesNearest(stretch);
                double station = start + onGap * stretch.Length;
                if (segment.At(onLine).DistanceTo(stretch.At(onGap)) <= reach && met.Add(chain.NodeAt(station))) yield return (station, segment.At(onLine));
                start += stretch.Length;
            }
        }
    }
}

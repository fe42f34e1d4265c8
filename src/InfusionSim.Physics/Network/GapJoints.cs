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

    /// <summary>Makes a finder.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="gaps">Nodes of its gaps.</param>
    public GapJoints(Panel panel, NodeChain[] gaps)
    {
        this.panel = panel;
        this.gaps = gaps;
    }

    /// <summary>Where a line meets gaps, each node of a gap named once.</summary>
    /// <param name="path">Where the line lies.</param>
    /// <param name="contactWidth">Its width [m].</param>
    /// <param name="line">Its index.</param>
    /// <param name="chain">Its nodes; null when its pressure is fixed.</param>
    public IEnumerable<GapContact> Of(LinePath path, double contactWidth, int line, NodeChain? chain)
    {
        for (int gap = 0; gap < gaps.Length; gap++)
        {
            double reach = Math.Max(contactWidth, panel.Gaps[gap].Width) / 2;
            foreach ((double station, Point2 place) in Meetings(path, panel.Gaps[gap].Path, gaps[gap], reach))
            {
                int lineNode = chain?.NodeNear(place) ?? -1;
                double resistance = gaps[gap].ResistanceTo(station) + (chain?.ResistanceTo(chain.StationNear(place)) ?? 0);
                yield return new(line, lineNode, gaps[gap].NodeAt(station), 1 / resistance);
            }
        }
    }

    /// <summary>Conductances where gaps meet one another.</summary>
    public IEnumerable<NodeLink> BetweenGaps()
    {
        for (int a = 0; a < gaps.Length; a++)
        {
            for (int b = a + 1; b < gaps.Length; b++)
            {
                double reach = Math.Max(panel.Gaps[a].Width, panel.Gaps[b].Width) / 2;
                foreach ((double station, Point2 place) in Meetings(panel.Gaps[a].Path, panel.Gaps[b].Path, gaps[b], reach))
                    yield return new(gaps[a].NodeNear(place), gaps[b].NodeAt(station), 1 / (gaps[a].ResistanceTo(gaps[a].StationNear(place)) + gaps[b].ResistanceTo(station)));
            }
        }
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

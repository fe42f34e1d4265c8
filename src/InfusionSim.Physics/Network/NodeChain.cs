using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Lines;

namespace InfusionSim.Physics.Network;

/// <summary>The nodes of one line or gap in the order of its path; a line whose pressure is the same all along it has one.</summary>
public sealed class NodeChain
{
    private readonly Segment[] segments;
    private readonly double[] cuts, conductances;

    /// <summary>Makes a chain.</summary>
    /// <param name="path">Corners of the path [m].</param>
    /// <param name="cuts">Distances from the start of the path between which the nodes lie [m], one more than nodes; two for a line with one pressure.</param>
    /// <param name="first">Its first node.</param>
    /// <param name="conductances">Permeability of the passage times its cross-section at each node [m⁴]; +∞ for a line with one pressure.</param>
    internal NodeChain(IReadOnlyList<Point2> path, double[] cuts, int first, double[] conductances)
    {
        segments = [.. Segment.Between(path)];
        this.cuts = cuts;
        this.conductances = conductances;
        First = first;
    }

    /// <summary>Its first node.</summary>
    public int First { get; }

    /// <summary>How many nodes it has [-].</summary>
    public int Count => cuts.Length - 1;

    /// <summary>Length of the path [m].</summary>
    public double Length => cuts[^1];

    /// <summary>Node that holds the place of the path that lies nearest to a place.</summary>
    /// <param name="place">The place [m].</param>
    public int NodeNear(Point2 place) => NodeAt(StationNear(place));

    /// <summary>Node that holds a place of the path.</summary>
    /// <param name="station">Distance from the start of the path [m].</param>
    public int NodeAt(double station)
    {
        int found = Array.BinarySearch(cuts, station);
        return First + Math.Clamp(found >= 0 ? found : ~found - 1, 0, Count - 1);
    }

    /// <summary>Distance of a node's middle from the start of the path [m].</summary>
    /// <param name="node">The node.</param>
    public double StationOf(int node) => (cuts[node - First] + cuts[node - First + 1]) / 2;

    /// <summary>Distance from the start of the path to its place nearest to another place [m].</summary>
    /// <param name="place">The place [m].</param>
    public double StationNear(Point2 place)
    {
        double nearest = double.PositiveInfinity, best = 0, start = 0;
        foreach (Segment segment in segments)
        {
            double share = segment.ShareNearest(place), distance = segment.At(share).DistanceTo(place);
            if (distance < nearest) (nearest, best) = (distance, start + share * segment.Length);
            start += segment.Length;
        }

        return best;
    }

    /// <summary>A place of the path [m].</summary>
    /// <param name="station">Distance from its start [m].</param>
    public Point2 At(double station)
    {
        double start = 0;
        foreach (Segment segment in segments)
        {
            if (station <= start + segment.Length) return segment.At((station - start) / segment.Length);
            start += segment.Length;
        }

        return segments[^1].To;
    }

    /// <summary>Length of a node's part of the path [m].</summary>
    /// <param name="node">The node.</param>
    public double LengthOf(int node) => cuts[node - First + 1] - cuts[node - First];

    /// <summary>Resistance of half the passage of a node, from its middle to its end [1/m³]; 0 for a line with one pressure.</summary>
    /// <param name="node">The node.</param>
    internal double HalfResistance(int node) => LengthOf(node) / 2 / conductances[node - First];

    /// <summary>Resistance of the passage from a place of the path to the middle of a node at or beside it [1/m³]; 0 for a line with one pressure.</summary>
    /// <param name="station">Distance of the place from the start of the path [m].</param>
    /// <param name="node">The node.</param>
    /// <param name="leastShare">Least distance that counts, as a share of the node's length [-].</param>
    internal double ResistanceTo(double station, int node, double leastShare)
    {
        double distance = Math.Max(Math.Abs(StationOf(node) - station), leastShare * LengthOf(node)), inside = Math.Min(distance, LengthOf(node) / 2);
        int holder = NodeAt(station);
        return inside / conductances[node - First] + (distance - inside) / conductances[holder - First];
    }
}

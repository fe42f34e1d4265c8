using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;
using InfusionSim.Physics.Lines;

namespace InfusionSim.Physics.Network;

/// <summary>Cuts a path into short lengths, about one for each square it crosses.</summary>
/// <remarks>
/// The cuts lie where the path crosses the lines of the grid, so that beside a straight edge the middle of each length lies level with the middle of
/// its square.
/// </remarks>
internal static class PathElements
{
    // Where a slanted path clips the corner of a square the piece goes to its neighbour.
    private const double ShortestInCells = 0.5;

    /// <summary>Distances from the start of the path at which it is cut, both ends included [m].</summary>
    /// <param name="points">Corners of the path [m].</param>
    /// <param name="grid">The squares.</param>
    public static double[] Cuts(IReadOnlyList<Point2> points, UniformGrid grid)
    {
        List<double> crossings = [];
        double start = 0;
        foreach (Segment segment in Segment.Between(points))
        {
            AddCrossings(segment.From.X - grid.Origin.X, segment.To.X - grid.Origin.X);
            AddCrossings(segment.From.Y - grid.Origin.Y, segment.To.Y - grid.Origin.Y);
            start += segment.Length;

            void AddCrossings(double from, double to)
            {
                double low = Math.Min(from, to) / grid.CellSize, high = Math.Max(from, to) / grid.CellSize;
                for (double line = Math.Ceiling(low); line <= Math.Floor(high) && high > low; line++)
                    crossings.Add(start + (line * grid.CellSize - from) / (to - from) * segment.Length);
            }
        }

        double shortest = ShortestInCells * grid.CellSize, length = start;
        List<double> cuts = [0];
        foreach (double at in crossings.Order())
        {
            if (at - cuts[^1] >= shortest && length - at >= shortest) cuts.Add(at);
        }

        cuts.Add(length);
        return [.. cuts];
    }
}

namespace InfusionSim.Numerics.Grids.Cutting;

/// <summary>Walks from host to host through open faces.</summary>
internal sealed class HostWalk
{
    // Around a merged sliver and its merged neighbour the way is three or four faces long; six leaves room for a chain.
    private const int FarthestSteps = 6;
    private readonly CutSquares squares;
    private readonly HashSet<(int Host, int Next)> joined = [];

    /// <summary>Prepares the walk.</summary>
    /// <param name="squares">The cut region.</param>
    /// <param name="merger">Who hosts which part.</param>
    public HostWalk(CutSquares squares, PartMerger merger)
    {
        this.squares = squares;
        foreach (FaceOpening opening in squares.Openings)
        {
            if (!merger.JoinsNeighbours(opening)) continue;
            int before = merger.HostOf[opening.PartBefore], beyond = merger.HostOf[opening.PartBeyond];
            joined.Add((before, beyond));
            joined.Add((beyond, before));
        }
    }

    /// <summary>Whether one host reaches another in a few steps.</summary>
    /// <param name="from">The one host.</param>
    /// <param name="to">The other host.</param>
    public bool AreNear(int from, int to)
    {
        var seen = new HashSet<int> { from };
        var edge = new List<int> { from };
        for (int step = 0; step < FarthestSteps && edge.Count > 0; step++)
        {
            var next = new List<int>();
            foreach (int host in edge)
            {
                foreach (int neighbour in NeighboursOf(host))
                {
                    if (neighbour == to) return true;
                    if (seen.Add(neighbour)) next.Add(neighbour);
                }
            }

            edge = next;
        }

        return false;
    }

    private IEnumerable<int> NeighboursOf(int host)
    {
        UniformGrid grid = squares.Grid;
        if (grid.ColumnOf(host) + 1 < grid.Columns && IsJoined(host, host + 1, east: true, host)) yield return host + 1;
        if (grid.ColumnOf(host) > 0 && IsJoined(host, host - 1, east: true, host - 1)) yield return host - 1;
        if (grid.RowOf(host) + 1 < grid.Rows && IsJoined(host, host + grid.Columns, east: false, host)) yield return host + grid.Columns;
        if (grid.RowOf(host) > 0 && IsJoined(host, host - grid.Columns, east: false, host - grid.Columns)) yield return host - grid.Columns;
    }

    private bool IsJoined(int host, int next, bool east, int face) =>
        joined.Contains((host, next))
        || (squares.IsWhole(host) && squares.IsWhole(next) && (east ? squares.Sweep.IsEastOpen : squares.Sweep.IsNorthOpen)[face]);
}

namespace InfusionSim.Numerics.Grids.Cutting;

/// <summary>Finds, along every grid line, where the region lies on both sides: the open stretches of the faces.</summary>
/// <remarks>
/// Just before a grid line (left of it, or below it) the region begins and ends where a piece of an edge comes from that side and
/// touches the line; likewise just beyond it. A closed ring touches each side an even number of times, so the ends pair up whatever the
/// drawing. A face is open where both sides are inside. Pieces along the line count for neither side.
/// </remarks>
internal sealed class GridLineSweep
{
    private readonly UniformGrid grid;
    private readonly Dictionary<int, List<(double Low, double High)>> partEast = [], partNorth = [];

    /// <summary>Sweeps all grid lines.</summary>
    /// <param name="grid">The squares.</param>
    /// <param name="pieces">Pieces of the rings.</param>
    public GridLineSweep(UniformGrid grid, List<GridPiece> pieces)
    {
        this.grid = grid;
        IsInside = new bool[grid.CellCount];
        IsEastOpen = new bool[grid.CellCount];
        IsNorthOpen = new bool[grid.CellCount];
        Sweep(pieces, east: true);
        Sweep(pieces, east: false);
    }

    /// <summary>Whether the right border of a square lies inside over its whole length; for a square that no piece cuts: whether it is inside.</summary>
    public bool[] IsInside { get; }

    /// <summary>Whether an east face is open over its whole length.</summary>
    public bool[] IsEastOpen { get; }

    /// <summary>Whether a north face is open over its whole length.</summary>
    public bool[] IsNorthOpen { get; }

    /// <summary>Open stretches of the east or the north face of a square.</summary>
    /// <param name="square">The square.</param>
    /// <param name="east">True for the east face, false for the north face.</param>
    public List<FaceOpening> OpeningsOf(int square, bool east)
    {
        var openings = new List<FaceOpening>();
        int neighbour = square + (east ? 1 : grid.Columns);
        if ((east ? IsEastOpen : IsNorthOpen)[square])
        {
            double low = east ? grid.RowOf(square) : grid.ColumnOf(square);
            openings.Add(new FaceOpening(east, square, neighbour, low, low + 1));
        }
        else if ((east ? partEast : partNorth).TryGetValue(square, out List<(double Low, double High)>? stretches))
        {
            foreach ((double low, double high) in stretches) openings.Add(new FaceOpening(east, square, neighbour, low, high));
        }

        return openings;
    }

    private void Sweep(List<GridPiece> pieces, bool east)
    {
        int lines = (east ? grid.Columns : grid.Rows) + 1;
        var before = new List<double>?[lines];
        var beyond = new List<double>?[lines];
        foreach (GridPiece piece in pieces)
        {
            Touch(piece.Start, piece.End);
            Touch(piece.End, piece.Start);
        }

        for (int line = 0; line < lines; line++)
        {
            before[line]?.Sort();
            beyond[line]?.Sort();
            if (east && line > 0 && before[line] is { } ends) MarkInside(line - 1, ends);
            if (before[line] is { } low && beyond[line] is { } high) MarkOpen(line, low, high, east);
        }

        void Touch(GridPoint end, GridPoint other)
        {
            double across = east ? end.U : end.V, from = east ? other.U : other.V;
            if (across != Math.Floor(across) || across == from) return;
            List<double>?[] side = from < across ? before : beyond;
            (side[(int)across] ??= []).Add(east ? end.V : end.U);
        }
    }

    private void MarkInside(int column, List<double> ends)
    {
        for (int k = 0; k + 1 < ends.Count; k += 2)
        {
            int last = (int)Math.Floor(ends[k + 1]);
            for (int row = (int)Math.Ceiling(ends[k]); row < last; row++) IsInside[grid.IndexOf(column, row)] = true;
        }
    }

    private void MarkOpen(int line, List<double> before, List<double> beyond, bool east)
    {
        int a = 0, b = 0;
        while (a + 1 < before.Count && b + 1 < beyond.Count)
        {
            double low = Math.Max(before[a], beyond[b]), high = Math.Min(before[a + 1], beyond[b + 1]);
            if (low < high) MarkStretch(line - 1, low, high, east);
            if (before[a + 1] < beyond[b + 1]) a += 2;
            else b += 2;
        }
    }

    private void MarkStretch(int lineBefore, double low, double high, bool east)
    {
        for (int step = (int)Math.Floor(low); step < high; step++)
        {
            int square = east ? grid.IndexOf(lineBefore, step) : grid.IndexOf(step, lineBefore);
            double from = Math.Max(low, step), to = Math.Min(high, step + 1);
            if (from == step && to == step + 1)
            {
                (east ? IsEastOpen : IsNorthOpen)[square] = true;
                continue;
            }

            Dictionary<int, List<(double Low, double High)>> partly = east ? partEast : partNorth;
            if (!partly.TryGetValue(square, out List<(double Low, double High)>? stretches)) partly[square] = stretches = [];
            // Two stretches that meet end to end (a corner of the outline touching the line from one side) are kept apart: the corner is a place of the trace.
            stretches.Add((from, to));
        }
    }
}

using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Numerics.Grids.Cutting;

/// <summary>A region cut into squares before anything is merged: whole squares, parts of cut squares and the openings between them.</summary>
internal sealed class CutSquares
{
    /// <summary>Cuts a region.</summary>
    /// <param name="region">The region, free of faults.</param>
    /// <param name="grid">Squares that cover it.</param>
    public CutSquares(Region region, UniformGrid grid)
    {
        Grid = grid;
        Pieces = EdgeSplitter.Split(region, grid);
        Sweep = new GridLineSweep(grid, Pieces);
        PartOfPiece = Pieces.ConvertAll(p => p.Square).ToArray();
        IsCut = new bool[grid.CellCount];
        var stretchesOf = new SortedDictionary<int, List<BorderStretch>>();
        foreach (GridPiece piece in Pieces)
        {
            if (piece.OnGridLine || IsCut[piece.Square]) continue;
            IsCut[piece.Square] = true;
            stretchesOf[piece.Square] = [];
        }

        for (int k = 0; k < Pieces.Count; k++)
        {
            GridPiece piece = Pieces[k];
            if (IsCut[piece.Square]) stretchesOf[piece.Square].Add(new BorderStretch(piece.Start, piece.End, k, null));
        }

        CollectOpenings(stretchesOf);
        var tracer = new SquareTracer(grid, PartOfPiece);
        int extra = grid.CellCount;
        foreach ((int square, List<BorderStretch> stretches) in stretchesOf)
        {
            List<SquarePart> traced = tracer.Trace(square, stretches, position => position == 0 ? square : extra++);
            Parts.AddRange(traced);
        }

        NumberCount = extra;
    }

    /// <summary>The squares.</summary>
    public UniformGrid Grid { get; }

    /// <summary>Pieces of the rings, in their order.</summary>
    public List<GridPiece> Pieces { get; }

    /// <summary>Number of the part each piece bounds.</summary>
    public int[] PartOfPiece { get; }

    /// <summary>Where the faces are open.</summary>
    public GridLineSweep Sweep { get; }

    /// <summary>Whether an edge cuts a square.</summary>
    public bool[] IsCut { get; }

    /// <summary>Parts of the cut squares, square by square, the largest of each first.</summary>
    public List<SquarePart> Parts { get; } = [];

    /// <summary>Openings with a cut square at one side at least.</summary>
    public List<FaceOpening> Openings { get; } = [];

    /// <summary>One more than the highest number of a part.</summary>
    public int NumberCount { get; }

    /// <summary>Whether a square lies wholly inside.</summary>
    /// <param name="square">Index of the square.</param>
    public bool IsWhole(int square) => !IsCut[square] && Sweep.IsInside[square];

    private void CollectOpenings(SortedDictionary<int, List<BorderStretch>> stretchesOf)
    {
        foreach (int square in stretchesOf.Keys)
        {
            int column = Grid.ColumnOf(square), row = Grid.RowOf(square);
            AddFace(square, east: true);
            AddFace(square, east: false);
            // The faces of a cut neighbour to the left or below are its own east and north faces.
            if (column > 0 && !IsCut[square - 1]) AddFace(square - 1, east: true);
            if (row > 0 && !IsCut[square - Grid.Columns]) AddFace(square - Grid.Columns, east: false);
        }

        void AddFace(int square, bool east)
        {
            foreach (FaceOpening opening in Sweep.OpeningsOf(square, east))
            {
                Openings.Add(opening);
                double line = (east ? Grid.ColumnOf(square) : Grid.RowOf(square)) + 1;
                GridPoint low = east ? new(line, opening.Low) : new(opening.Low, line);
                GridPoint high = east ? new(line, opening.High) : new(opening.High, line);
                // Up the east face and leftwards along the north face the square itself lies on the left.
                if (IsCut[square]) stretchesOf[square].Add(east ? new(low, high, -1, opening) : new(high, low, -1, opening));
                if (IsCut[opening.Neighbour]) stretchesOf[opening.Neighbour].Add(east ? new(high, low, -1, opening) : new(low, high, -1, opening));
            }
        }
    }
}

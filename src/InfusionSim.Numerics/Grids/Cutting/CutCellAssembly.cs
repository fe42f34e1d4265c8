using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Numerics.Grids.Cutting;

/// <summary>Adds up what each host owns and turns squares into metres.</summary>
internal sealed class CutCellAssembly
{
    private readonly Region region;
    private readonly CutSquares squares;
    private readonly PartMerger merger;
    private readonly UniformGrid grid;
    private readonly GridFrame frame;
    private readonly double[] area, centroidX, centroidY, eastAperture, northAperture, eastMiddle, northMiddle;

    /// <summary>Prepares the arrays.</summary>
    /// <param name="region">The region that was cut.</param>
    /// <param name="squares">The cut region.</param>
    /// <param name="merger">Who hosts which part.</param>
    public CutCellAssembly(Region region, CutSquares squares, PartMerger merger)
    {
        (this.region, this.squares, this.merger, grid) = (region, squares, merger, squares.Grid);
        frame = new GridFrame(grid);
        int count = grid.CellCount;
        (area, centroidX, centroidY) = (new double[count], new double[count], new double[count]);
        (eastAperture, northAperture, eastMiddle, northMiddle) = (new double[count], new double[count], new double[count], new double[count]);
    }

    /// <summary>The finished grid.</summary>
    public CutCellGrid ToGrid()
    {
        AddAreas();
        AddFaces();
        return new CutCellGrid
        {
            Grid = grid,
            Region = region,
            Area = area,
            CentroidX = centroidX,
            CentroidY = centroidY,
            EastAperture = eastAperture,
            NorthAperture = northAperture,
            EastMiddleY = eastMiddle,
            NorthMiddleX = northMiddle,
            EdgePieces = MakeEdgePieces(),
            OwnerOf = [.. Enumerable.Range(0, grid.CellCount).Select(merger.OwnerOf)],
            CutParts = squares.Parts.ConvertAll(MakePart),
            LostPassages = merger.Lost.ConvertAll(MiddleOf),
        };
    }

    private void AddAreas()
    {
        double size = grid.CellSize;
        for (int cell = 0; cell < grid.CellCount; cell++)
        {
            Point2 centre = grid.CentreOf(cell);
            (centroidX[cell], centroidY[cell]) = (centre.X, centre.Y);
            if (squares.IsWhole(cell)) area[cell] = 1;
        }

        var momentOf = new Dictionary<int, (double U, double V)>();
        foreach (SquarePart part in squares.Parts)
        {
            int host = merger.HostOf[part.Number];
            area[host] += part.Area;
            (double u, double v) = momentOf.GetValueOrDefault(host);
            // A whole host has no moment about its own middle; parts bring theirs, moved to the host's middle.
            u += part.MomentU + part.Area * (grid.ColumnOf(part.Square) - grid.ColumnOf(host));
            v += part.MomentV + part.Area * (grid.RowOf(part.Square) - grid.RowOf(host));
            momentOf[host] = (u, v);
        }

        foreach ((int host, (double u, double v)) in momentOf)
        {
            if (area[host] <= 0) continue;
            centroidX[host] += u / area[host] * size;
            centroidY[host] += v / area[host] * size;
        }

        for (int cell = 0; cell < grid.CellCount; cell++) area[cell] *= size * size;
    }

    private void AddFaces()
    {
        double size = grid.CellSize;
        for (int cell = 0; cell < grid.CellCount; cell++)
        {
            if (!squares.IsWhole(cell)) continue;
            if (squares.Sweep.IsEastOpen[cell] && squares.IsWhole(cell + 1)) (eastAperture[cell], eastMiddle[cell]) = (1, grid.RowOf(cell) + 0.5);
            if (squares.Sweep.IsNorthOpen[cell] && squares.IsWhole(cell + grid.Columns)) (northAperture[cell], northMiddle[cell]) = (1, grid.ColumnOf(cell) + 0.5);
        }

        foreach (FaceOpening opening in squares.Openings)
        {
            if (!merger.JoinsNeighbours(opening)) continue;
            int host = merger.HostOf[opening.PartBefore];
            double[] aperture = opening.IsEast ? eastAperture : northAperture, middle = opening.IsEast ? eastMiddle : northMiddle;
            double sum = aperture[host] + opening.Length;
            middle[host] = (middle[host] * aperture[host] + (opening.Low + opening.High) / 2 * opening.Length) / sum;
            aperture[host] = sum;
        }

        for (int cell = 0; cell < grid.CellCount; cell++)
        {
            eastAperture[cell] *= size;
            northAperture[cell] *= size;
            eastMiddle[cell] = grid.Origin.Y + size * (eastAperture[cell] > 0 ? eastMiddle[cell] : grid.RowOf(cell) + 0.5);
            northMiddle[cell] = grid.Origin.X + size * (northAperture[cell] > 0 ? northMiddle[cell] : grid.ColumnOf(cell) + 0.5);
        }
    }

    private List<EdgePiece> MakeEdgePieces()
    {
        var made = new List<EdgePiece>(squares.Pieces.Count);
        for (int k = 0; k < squares.Pieces.Count; k++)
        {
            GridPiece piece = squares.Pieces[k];
            made.Add(new EdgePiece(merger.HostOf[squares.PartOfPiece[k]], piece.From, piece.To, piece.RingIndex));
        }

        return made;
    }

    private Point2 MiddleOf(FaceOpening opening)
    {
        double along = (opening.Low + opening.High) / 2;
        return frame.ToPlace(opening.IsEast ? new(grid.ColumnOf(opening.Square) + 1, along) : new(along, grid.RowOf(opening.Square) + 1));
    }

    private CellPart MakePart(SquarePart part) => new(
        part.Square,
        merger.HostOf[part.Number],
        part.Area * grid.CellSize * grid.CellSize,
        MakeRing(part.Outer),
        part.Holes.ConvertAll(MakeRing));

    private Ring MakeRing(List<GridPoint> corners) => new(corners.ConvertAll(frame.ToPlace));
}

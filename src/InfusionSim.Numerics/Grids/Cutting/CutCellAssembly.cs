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
        FillWhole();
        AddParts();
        AddOpenings();
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
            OwnerOf = merger.OwnerOfSquares(),
            CutParts = squares.Parts.ConvertAll(MakePart),
            LostPassages = merger.Lost.ConvertAll(MiddleOf),
        };
    }

    private void FillWhole()
    {
        double size = grid.CellSize, square = size * size;
        bool[] east = squares.Sweep.IsEastOpen, north = squares.Sweep.IsNorthOpen;
        for (int row = 0; row < grid.Rows; row++)
        {
            double y = grid.Origin.Y + (row + 0.5) * size;
            for (int column = 0, cell = row * grid.Columns; column < grid.Columns; column++, cell++)
            {
                double x = grid.Origin.X + (column + 0.5) * size;
                (centroidX[cell], centroidY[cell], eastMiddle[cell], northMiddle[cell]) = (x, y, y, x);
                if (!squares.IsWhole(cell)) continue;
                area[cell] = square;
                if (east[cell] && squares.IsWhole(cell + 1)) eastAperture[cell] = size;
                if (north[cell] && squares.IsWhole(cell + grid.Columns)) northAperture[cell] = size;
            }
        }
    }

    private void AddParts()
    {
        var ownedBy = new Dictionary<int, (double Area, double MomentU, double MomentV)>();
        foreach (SquarePart part in squares.Parts)
        {
            int host = merger.HostOf[part.Number];
            if (!ownedBy.TryGetValue(host, out var owned)) owned = (squares.IsWhole(host) ? 1 : 0, 0, 0);
            owned.Area += part.Area;
            // A whole host has no moment about its own middle; parts bring theirs, moved to the host's middle.
            owned.MomentU += part.MomentU + part.Area * (grid.ColumnOf(part.Square) - grid.ColumnOf(host));
            owned.MomentV += part.MomentV + part.Area * (grid.RowOf(part.Square) - grid.RowOf(host));
            ownedBy[host] = owned;
        }

        double size = grid.CellSize;
        foreach ((int host, (double squareCount, double momentU, double momentV)) in ownedBy)
        {
            area[host] = squareCount * size * size;
            if (squareCount <= 0) continue;
            centroidX[host] += momentU / squareCount * size;
            centroidY[host] += momentV / squareCount * size;
        }
    }

    private void AddOpenings()
    {
        double size = grid.CellSize;
        foreach (FaceOpening opening in squares.Openings)
        {
            if (!merger.JoinsNeighbours(opening)) continue;
            int host = merger.HostOf[opening.PartBefore];
            double[] aperture = opening.IsEast ? eastAperture : northAperture, middle = opening.IsEast ? eastMiddle : northMiddle;
            double length = opening.Length * size, sum = aperture[host] + length;
            double centre = (opening.IsEast ? grid.Origin.Y : grid.Origin.X) + (opening.Low + opening.High) / 2 * size;
            middle[host] += (centre - middle[host]) * (length / sum);
            aperture[host] = sum;
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

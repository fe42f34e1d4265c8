using Google.Protobuf;
using InfusionSim.Numerics.Grids;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;
using Domain = InfusionSim.Physics.Forecasts;

namespace InfusionSim.Protocol.Forecasts;

/// <summary>Turns the arrival times of a forecast into the map that pictures are drawn from.</summary>
public static class FrontMapMapping
{
    /// <summary>Maps the arrival times.</summary>
    /// <param name="forecast">The forecast.</param>
    /// <param name="withQuality">Whether to add the quality numbers of each square.</param>
    public static FrontMap ToContract(Domain.Forecast forecast, bool withQuality = false)
    {
        ArgumentNullException.ThrowIfNull(forecast);
        CutCellGrid cells = forecast.Map.Problem.Cells;
        var dryCells = new HashSet<int>(forecast.DrySpots.SelectMany(spot => spot.Cells));
        FrontSide seen = SideOf(forecast.ArrivalTimes, cells, dryCells.Contains);
        var map = new FrontMap { Grid = ToGrid(cells.Grid), Squares = seen.Squares, ArrivalTimeS = { seen.ArrivalTimeS } };
        if (withQuality && forecast.Quality is not null) QualityMapping.AddTo(map, forecast.Quality, cells.OwnerOf);
        if (!HasLayers(forecast)) return map;
        var dryNodes = new HashSet<int>(forecast.DrySpots.SelectMany(spot => spot.Nodes));
        int[] toolSide = forecast.Map.Problem.ToolSide;
        map.ToolSide = SideOf(forecast.ToolSideArrivalTimes, cells, cell => dryNodes.Contains(toolSide[cell]));
        return map;
    }

    /// <summary>Whether the panel of a forecast has layers with their own fronts.</summary>
    /// <param name="forecast">The forecast.</param>
    internal static bool HasLayers(Domain.Forecast forecast) => forecast.Map.Problem.Stack is { Layers.Count: > 1 };

    /// <summary>Where the squares lie, in the contract's millimetres.</summary>
    /// <param name="grid">The squares.</param>
    public static CellGrid ToGrid(UniformGrid grid)
    {
        ArgumentNullException.ThrowIfNull(grid);
        return new CellGrid
        {
            OriginXMm = UnitConversion.MmFromMetres(grid.Origin.X),
            OriginYMm = UnitConversion.MmFromMetres(grid.Origin.Y),
            CellMm = UnitConversion.MmFromMetres(grid.CellSize),
            Columns = grid.Columns,
            Rows = grid.Rows,
        };
    }

    private static FrontSide SideOf(double[] times, CutCellGrid cells, Func<int, bool> isDry)
    {
        var squares = new byte[cells.Grid.CellCount];
        var arrivals = new float[squares.Length];
        for (int square = 0; square < squares.Length; square++)
        {
            // A square whose sliver of cloth belongs to a neighbour shows what the neighbour shows.
            int owner = cells.OwnerOf[square];
            squares[square] = (byte)StateOf(owner, times, isDry);
            if (squares[square] == (byte)SquareState.Wets) arrivals[square] = (float)times[owner];
        }

        return new FrontSide { Squares = ByteString.CopyFrom(squares), ArrivalTimeS = { arrivals } };
    }

    private static SquareState StateOf(int owner, double[] times, Func<int, bool> isDry)
    {
        if (owner < 0) return SquareState.NoCloth;
        if (isDry(owner)) return SquareState.DrySpot;
        return double.IsFinite(times[owner]) ? SquareState.Wets : SquareState.NeverReached;
    }
}

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
    public static FrontMap ToContract(Domain.Forecast forecast)
    {
        ArgumentNullException.ThrowIfNull(forecast);
        CutCellGrid cells = forecast.Map.Problem.Cells;
        var dry = new HashSet<int>(forecast.DrySpots.SelectMany(spot => spot.Cells));
        var squares = new byte[cells.Grid.CellCount];
        var arrivals = new float[squares.Length];
        for (int square = 0; square < squares.Length; square++)
        {
            // A square whose sliver of cloth belongs to a neighbour shows what the neighbour shows.
            int owner = cells.OwnerOf[square];
            squares[square] = (byte)StateOf(owner, forecast, dry);
            if (squares[square] == (byte)SquareState.Wets) arrivals[square] = (float)forecast.ArrivalTimes[owner];
        }

        var map = new FrontMap { Grid = ToGrid(cells.Grid), Squares = ByteString.CopyFrom(squares) };
        map.ArrivalTimeS.AddRange(arrivals);
        return map;
    }

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

    private static SquareState StateOf(int owner, Domain.Forecast forecast, HashSet<int> dry)
    {
        if (owner < 0) return SquareState.NoCloth;
        if (dry.Contains(owner)) return SquareState.DrySpot;
        return double.IsFinite(forecast.ArrivalTimes[owner]) ? SquareState.Wets : SquareState.NeverReached;
    }
}

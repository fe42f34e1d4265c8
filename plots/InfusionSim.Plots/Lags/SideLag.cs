using InfusionSim.Plots.Contours;
using InfusionSim.Plots.Panels;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Plots.Lags;

/// <summary>How long each place of one side is wet after the same place of the other.</summary>
/// <param name="BehindS">Lag in the middle of each square, 0 where that side is ahead, NaN where one of the two stays dry [s]. [rows × columns], x fastest.</param>
/// <param name="IsToolSide">Whether it is the tool side that is behind; else the bag side is.</param>
/// <param name="LargestS">The longest lag [s].</param>
/// <param name="At">Where that is; null when neither side is behind.</param>
internal sealed record SideLag(double[] BehindS, bool IsToolSide, double LargestS, Spot? At)
{
    // Less than this share of the whole fill is nothing that anybody could wait for.
    private const double KeepsUp = 0.01;

    /// <summary>The lag of the side that is farther behind.</summary>
    internal static SideLag Between(PanelAnswer bag, PanelAnswer tool)
    {
        double[] toolSide = [.. bag.Front.Squares.Select((_, i) => Later(bag.Front, tool.Front, i))];
        var isToolSide = toolSide.Where(double.IsFinite).DefaultIfEmpty().Max() >= -toolSide.Where(double.IsFinite).DefaultIfEmpty().Min();
        double[] behind = [.. toolSide.Select(lag => double.IsNaN(lag) ? lag : Math.Max(0, isToolSide ? lag : -lag))];
        var largest = behind.Where(double.IsFinite).DefaultIfEmpty().Max();
        if (largest <= KeepsUp * bag.Forecast.EndTimeS)
        {
            return new SideLag(behind, isToolSide, largest, null);
        }

        // Of a panel that lags behind, the service says how far and where, to more than a square.
        return isToolSide && bag.Forecast.Lag is { At: { } at } told
            ? new SideLag(behind, isToolSide, 60 * told.LargestMin, ClothArea.Read(at))
            : new SideLag(behind, isToolSide, largest, Middle(bag.Front.Grid, Array.IndexOf(behind, largest)));
    }

    private static double Later(FrontMap bag, FrontMap tool, int square) =>
        bag.Squares[square] == (byte)SquareState.Wets && tool.Squares[square] == (byte)SquareState.Wets
            ? tool.ArrivalTimeS[square] - bag.ArrivalTimeS[square] : double.NaN;

    private static Spot Middle(CellGrid grid, int square) => new(
        grid.OriginXMm + (square % grid.Columns + 0.5) * grid.CellMm, grid.OriginYMm + (square / grid.Columns + 0.5) * grid.CellMm);
}

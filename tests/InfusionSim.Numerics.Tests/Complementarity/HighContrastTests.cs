using InfusionSim.Numerics.Complementarity;
using InfusionSim.Numerics.Krylov;
using InfusionSim.Numerics.Multigrid;
using InfusionSim.Numerics.Stencils;

namespace InfusionSim.Numerics.Tests.Complementarity;

/// <summary>Cycles from zero to a residual of 1e-8 of the supply on 512² cells, where places conduct a million times better or worse than the rest.</summary>
public class HighContrastTests
{
    private const int Across = 512;
    private const double Million = 1e6;

    [Fact]
    public void Solve_IslandsThatConductAMillionTimesWorse_TakesAsManyCyclesAsEvenCloth() =>
        Cycles(ContrastedCloth.Islands(Across, 1 / Million)).ShouldBeInRange(1, 10);

    [Fact]
    public void Solve_IslandsThatConductAMillionTimesBetter_TakesFewCycles() => Cycles(ContrastedCloth.Islands(Across, Million)).ShouldBeInRange(1, 15);

    [Fact]
    public void Solve_StraightChannelsOneCellWide_TakesFewCycles() => Cycles(ContrastedCloth.StraightChannels(Across, Million)).ShouldBeInRange(1, 16);

    [Fact]
    public void Solve_SteppedChannelOneCellWide_TakesFewCycles() => Cycles(ContrastedCloth.SteppedChannel(Across, Million)).ShouldBeInRange(1, 16);

    // Neighbours a cell apart run together on a coarse grid; each such pair costs conjugate gradients a few cycles.
    [Fact]
    public void Solve_ThreeHundredIslands_TakesTwiceTheCyclesOfTwo() => Cycles(ContrastedCloth.ManyIslands(Across, Million)).ShouldBeInRange(1, 32);

    [Theory]
    [InlineData(256, 1e6)]
    [InlineData(97, 1e5)]
    public unsafe void Update_ClosedSquareWithIslands_LeadsNowhereOnAnyGrid(int across, double contrast)
    {
        LatticeOperator matrix = ContrastedCloth.Islands(across, contrast);
        Array.Clear(matrix.Anchor);
        ScaledOperator scaled = new(matrix);
        MultigridHierarchy hierarchy = new(scaled.MakeFinestLevel());
        WetAll(hierarchy.Levels[0], scaled);
        hierarchy.Update();
        double betweenIslands = 1 / scaled.Scale;
        foreach (MultigridLevel level in hierarchy.Levels)
        {
            double sum = 0;
            for (int row = 0; row < level.Layout.Rows; row++)
                for (int column = 0; column < level.Layout.Columns; column++) sum += level.Slack.Row(row)[column];

            // Rounding to single precision of couplings a million times as large, squared, leaves far less than one cell leads.
            Math.Abs(sum).ShouldBeLessThan(0.01 * betweenIslands, $"{level.Layout.Columns} × {level.Layout.Rows}");
        }
    }

    private static unsafe void WetAll(MultigridLevel finest, ScaledOperator scaled)
    {
        PaddedLayout layout = finest.Layout;
        for (int row = 0; row < layout.Rows; row++)
        {
            for (int column = 0; column < layout.Columns; column++)
            {
                int at = layout.At(column, row);
                finest.Diagonal.Origin[at] = scaled.Diagonal.Origin[at];
                finest.EliminateColumn(column, row);
                finest.Changed.Add(column, row, 0);
                finest.Active.Include(row, column, column + 1);
            }
        }
    }

    private static int Cycles(LatticeOperator matrix)
    {
        double[] supply = new double[matrix.NodeCount];
        for (int row = 0; row < Across; row++) supply[row * Across] = matrix.Anchor[row * Across];
        SteadySolver solver = new(matrix, [.. Enumerable.Repeat(true, matrix.NodeCount)]);
        SolveReport report = solver.Solve(supply, new double[matrix.NodeCount], 1e-8);
        report.Reason.ShouldBe(StopReason.Converged);
        return report.Cycles;
    }
}

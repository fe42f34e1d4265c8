using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Tests.Properties;

/// <summary>A panel seen in a mirror or turned by a right angle fills in the same way.</summary>
public sealed class SymmetryTests
{
    // Ten times the solver's tolerance of 1e-10 on the balance of the wet pores, and the same again for the order of summation.
    private const double Tolerance = 2e-9;

    [Theory]
    [InlineData(VentKind.Membrane)]
    [InlineData(VentKind.Tube)]
    public void Fill_OfTheMirroredPanel_IsTheMirroredFill(VentKind kind) => Check(
        kind,
        place => new Point2(LopsidedPanel.Width - place.X, place.Y),
        angle => Math.PI - angle,
        (column, row, grid) => (grid.Columns - 1 - column, row));

    [Theory]
    [InlineData(VentKind.Membrane)]
    [InlineData(VentKind.Tube)]
    public void Fill_OfThePanelTurnedByARightAngle_IsTheTurnedFill(VentKind kind) => Check(
        kind,
        place => new Point2(LopsidedPanel.Height - place.Y, place.X),
        angle => angle + Math.PI / 2,
        (column, row, grid) => (grid.Rows - 1 - row, column));

    private static void Check(
        VentKind kind, Func<Point2, Point2> place, Func<double, double> angle, Func<int, int, Numerics.Grids.UniformGrid, (int Column, int Row)> cellOf)
    {
        Panel panel = LopsidedPanel.Of(kind);
        FillMap one = panel.Map(), other = panel.Mapped(place, 1, angle).Map();
        var grid = one.Problem.Cells.Grid;
        var otherGrid = other.Problem.Cells.Grid;

        (other.FillClock / one.FillClock).ShouldBe(1, Tolerance);
        foreach (double share in new[] { 0.02, 0.13, 0.37, 0.71, 0.96 })
        {
            FillState a = one.StateAt(share * one.FillClock), b = other.StateAt(share * one.FillClock);
            for (int cell = 0; cell < grid.CellCount; cell++)
            {
                (int column, int row) = cellOf(grid.ColumnOf(cell), grid.RowOf(cell), grid);
                int twin = otherGrid.IndexOf(column, row);
                b.Saturation[twin].ShouldBe(a.Saturation[cell], 1e-6, $"cell {cell} at {share} of the fill");
            }

            b.FilledFraction.ShouldBe(a.FilledFraction, Tolerance);
        }

        for (int cell = 0; cell < grid.CellCount; cell++)
        {
            (int column, int row) = cellOf(grid.ColumnOf(cell), grid.RowOf(cell), grid);
            double expected = one.Arrival[cell], observed = other.Arrival[otherGrid.IndexOf(column, row)];
            double.IsNaN(observed).ShouldBe(double.IsNaN(expected), $"cell {cell}");
            if (!double.IsNaN(expected)) Math.Abs(observed - expected).ShouldBeLessThanOrEqualTo(1e-3 * one.FillClock, $"cell {cell}");
        }
    }
}

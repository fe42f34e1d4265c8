using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Tests.Properties;

/// <summary>A panel seen in a mirror or turned by a right angle fills in the same way.</summary>
public sealed class SymmetryTests
{
    /// <summary>Panels by name.</summary>
    public static TheoryData<string> Panels => [.. UnevenPanels.All.Keys];

    [Theory]
    [MemberData(nameof(Panels))]
    public void Fill_OfTheMirroredPanel_IsTheMirroredFill(string name) => Check(
        UnevenPanels.All[name],
        place => new Point2(LopsidedPanel.Width - place.X, place.Y),
        angle => Math.PI - angle,
        (column, row, grid) => (grid.Columns - 1 - column, row));

    [Theory]
    [MemberData(nameof(Panels))]
    public void Fill_OfThePanelTurnedByARightAngle_IsTheTurnedFill(string name) => Check(
        UnevenPanels.All[name],
        place => new Point2(LopsidedPanel.Height - place.Y, place.X),
        angle => angle + Math.PI / 2,
        (column, row, grid) => (grid.Rows - 1 - row, column));

    private static void Check(
        Panel panel, Func<Point2, Point2> place, Func<double, double> angle, Func<int, int, UniformGrid, (int Column, int Row)> cellOf)
    {
        FillMap one = panel.Map(), other = panel.Mapped(place, 1, angle).Map();
        UniformGrid grid = one.Problem.Cells.Grid, otherGrid = other.Problem.Cells.Grid;

        SameFill.Check(one, other, TwinOf, 1);

        // Arrival is interpolated between states along the way, which are computed to a coarser tolerance, at moments that
        // follow from those states: it agrees only as closely as it is resolved.
        for (int cell = 0; cell < grid.CellCount; cell++)
        {
            double expected = one.Arrival[cell], observed = other.Arrival[TwinOf(cell)];
            double.IsNaN(observed).ShouldBe(double.IsNaN(expected), $"cell {cell}");
            if (!double.IsNaN(expected)) Math.Abs(observed - expected).ShouldBeLessThanOrEqualTo(1e-3 * one.FillClock, $"cell {cell}");
        }

        int TwinOf(int cell)
        {
            (int column, int row) = cellOf(grid.ColumnOf(cell), grid.RowOf(cell), grid);
            return otherGrid.IndexOf(column, row);
        }
    }
}

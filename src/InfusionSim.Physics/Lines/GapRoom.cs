using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;
using InfusionSim.Physics.Layers;

namespace InfusionSim.Physics.Lines;

/// <summary>Takes the room of a gap inside the cloth away from the cloth: where the gap is there are no pores to fill.</summary>
internal static class GapRoom
{
    private const double StepInCells = 0.05;

    // A cell that the gap takes up altogether keeps something to fill.
    private const double LeastLeft = 0.05;

    /// <summary>Takes it from the cells on both sides, a short step along the gap at a time.</summary>
    /// <param name="sheet">The layer.</param>
    /// <param name="stretches">Stretches of the gap that lie inside the cloth.</param>
    /// <param name="width">Width of the gap [m].</param>
    public static void Take(LayerSheet sheet, IReadOnlyList<Segment> stretches, double width)
    {
        CutCellGrid cells = sheet.Cells;
        CellFinder finder = new(cells);
        double[] before = (double[])sheet.PoreVolume.Clone();
        foreach (Segment stretch in stretches)
        {
            int steps = Math.Max(1, (int)Math.Ceiling(stretch.Length / (StepInCells * cells.Grid.CellSize)));
            double x = -(stretch.To.Y - stretch.From.Y) / stretch.Length * width / 4, y = (stretch.To.X - stretch.From.X) / stretch.Length * width / 4;
            for (int step = 0; step < steps; step++)
            {
                Point2 middle = stretch.At((step + 0.5) / steps);
                Take(new(middle.X + x, middle.Y + y), stretch.Length / steps * width / 2);
                Take(new(middle.X - x, middle.Y - y), stretch.Length / steps * width / 2);
            }
        }

        void Take(Point2 place, double area)
        {
            int cell = finder.OwnerAt(place);
            if (cell < 0 || !cells.HasCloth(cell)) return;
            double least = LeastLeft * before[cell];
            sheet.PoreVolume[cell] = Math.Max(least, sheet.PoreVolume[cell] - before[cell] * area / cells.Area[cell]);
        }
    }
}

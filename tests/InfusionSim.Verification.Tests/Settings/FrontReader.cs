using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;
using InfusionSim.Physics.Flow;

namespace InfusionSim.Verification.Tests.Settings;

/// <summary>Reads a front from the saturations of a state.</summary>
/// <param name="Cells">The cells.</param>
/// <param name="State">The state.</param>
public sealed record FrontReader(CutCellGrid Cells, FillState State)
{
    /// <summary>Wet area of the panel [m²]: the sum of saturation × area.</summary>
    public double WetArea
    {
        get
        {
            double sum = 0;
            for (int cell = 0; cell < Cells.Area.Length; cell++) sum += State.Saturation[cell] * Cells.Area[cell];
            return sum;
        }
    }

    /// <summary>Distance to where the saturation falls below one half along a ray [m].</summary>
    /// <param name="from">Start of the ray [m], where it is wet.</param>
    /// <param name="angle">Direction from x anticlockwise [rad].</param>
    /// <param name="farthest">Where to give up [m].</param>
    public double FrontAlong(Point2 from, double angle, double farthest)
    {
        double step = Cells.Grid.CellSize / 50;
        for (double distance = 0; distance < farthest; distance += step)
        {
            if (SaturationAt(new Point2(from.X + distance * Math.Cos(angle), from.Y + distance * Math.Sin(angle))) < 0.5) return distance;
        }

        return farthest;
    }

    // Bilinear between the middles of squares; beyond the outermost middles the value there.
    private double SaturationAt(Point2 place)
    {
        UniformGrid grid = Cells.Grid;
        double x = Math.Clamp((place.X - grid.Origin.X) / grid.CellSize - 0.5, 0, grid.Columns - 1);
        double y = Math.Clamp((place.Y - grid.Origin.Y) / grid.CellSize - 0.5, 0, grid.Rows - 1);
        int i = Math.Min((int)x, Math.Max(0, grid.Columns - 2)), j = Math.Min((int)y, Math.Max(0, grid.Rows - 2));
        double a = x - i, b = y - j;
        return (1 - b) * ((1 - a) * At(i, j) + a * At(i + 1, j)) + b * ((1 - a) * At(i, j + 1) + a * At(i + 1, j + 1));

        double At(int column, int row) => State.Saturation[grid.IndexOf(Math.Min(column, grid.Columns - 1), Math.Min(row, grid.Rows - 1))];
    }
}

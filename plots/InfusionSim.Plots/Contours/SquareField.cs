using InfusionSim.Protocol.V1;

namespace InfusionSim.Plots.Contours;

/// <summary>A number in the middle of every square, continued beyond the cloth so that contours meet the true outline and close.</summary>
internal sealed class SquareField
{
    /// <summary>Squares added on each side, so that a field continued past the outline has room [-].</summary>
    internal const int Border = 3;

    private SquareField(CellGrid grid, double[] values)
    {
        CellMm = grid.CellMm;
        Columns = grid.Columns + 2 * Border;
        Rows = grid.Rows + 2 * Border;
        FirstXMm = grid.OriginXMm + (0.5 - Border) * CellMm;
        FirstYMm = grid.OriginYMm + (0.5 - Border) * CellMm;
        Values = values;
    }

    /// <summary>Side of a square [mm].</summary>
    internal double CellMm { get; }

    /// <summary>Squares in a row, border included [-].</summary>
    internal int Columns { get; }

    /// <summary>Rows, border included [-].</summary>
    internal int Rows { get; }

    /// <summary>Middle of the first square, border included [mm].</summary>
    internal double FirstXMm { get; }

    /// <summary>Middle of the first square, border included [mm].</summary>
    internal double FirstYMm { get; }

    /// <summary>Value in the middle of each square; every one finite. [rows × columns], x fastest.</summary>
    internal double[] Values { get; }

    /// <summary>Continues a field from the squares that know a value to all others.</summary>
    /// <param name="grid">Where the squares lie.</param>
    /// <param name="known">Value in each square, NaN where it has none. [rows × columns], x fastest.</param>
    /// <param name="straight">Whether the first two squares beyond are continued in a straight line instead of copied.</param>
    internal static SquareField Continue(CellGrid grid, double[] known, bool straight)
    {
        var columns = grid.Columns + 2 * Border;
        var rows = grid.Rows + 2 * Border;
        var values = new double[columns * rows];
        Array.Fill(values, double.NaN);
        for (var row = 0; row < grid.Rows; row++)
        {
            Array.Copy(known, row * grid.Columns, values, (row + Border) * columns + Border, grid.Columns);
        }

        for (var layer = 0; Fill(values, columns, rows, straight && layer < 2); layer++)
        {
        }

        for (var i = 0; i < values.Length; i++)
        {
            values[i] = double.IsNaN(values[i]) ? 0 : values[i];
        }

        return new SquareField(grid, values);
    }

    private static bool Fill(double[] values, int columns, int rows, bool straight)
    {
        var found = new List<(int Square, double Value)>();
        for (var row = 0; row < rows; row++)
        {
            for (var column = 0; column < columns; column++)
            {
                var square = row * columns + column;
                if (double.IsNaN(values[square]) && Guess(values, columns, rows, row, column, straight) is { } guess)
                {
                    found.Add((square, guess));
                }
            }
        }

        foreach (var (square, value) in found)
        {
            values[square] = value;
        }

        return found.Count > 0;
    }

    private static double? Guess(double[] values, int columns, int rows, int row, int column, bool straight)
    {
        double sum = 0, weights = 0;
        for (var dy = -1; dy <= 1; dy++)
        {
            for (var dx = -1; dx <= 1; dx++)
            {
                var near = At(values, columns, rows, row + dy, column + dx);
                if ((dx == 0 && dy == 0) || double.IsNaN(near))
                {
                    continue;
                }

                var far = At(values, columns, rows, row + 2 * dy, column + 2 * dx);
                var isStraight = straight && !double.IsNaN(far);
                // A straight continuation is worth far more than a copy, a side neighbour more than one across a corner.
                var weight = (isStraight ? 1.0 : 0.01) * (dx == 0 || dy == 0 ? 2 : 1);
                sum += weight * (isStraight ? Math.Max(0, 2 * near - far) : near);
                weights += weight;
            }
        }

        return weights > 0 ? sum / weights : null;
    }

    private static double At(double[] values, int columns, int rows, int row, int column) =>
        row < 0 || column < 0 || row >= rows || column >= columns ? double.NaN : values[row * columns + column];
}

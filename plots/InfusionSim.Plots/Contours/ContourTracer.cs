namespace InfusionSim.Plots.Contours;

/// <summary>Traces the closed rings at which a field passes a level, by marching squares between the middles of the squares.</summary>
/// <remarks>
/// The middles on the border count as below every level, so that every ring closes. A saddle is decided by the mean of its four corners.
/// Every ring keeps the higher side on its left.
/// </remarks>
internal static class ContourTracer
{
    /// <summary>Rings around the places where the field is at or above a level.</summary>
    /// <param name="field">The field.</param>
    /// <param name="level">The level, in the field's unit.</param>
    /// <returns>Rings of points, each closed from its last point to its first [mm].</returns>
    internal static List<List<Spot>> Trace(SquareField field, double level)
    {
        var links = new Dictionary<int, int>();
        for (var row = 0; row + 1 < field.Rows; row++)
        {
            for (var column = 0; column + 1 < field.Columns; column++)
            {
                LinkSquare(field, level, row, column, links);
            }
        }

        return Walk(field, level, links);
    }

    private static void LinkSquare(SquareField field, double level, int row, int column, Dictionary<int, int> links)
    {
        var southWest = Value(field, row, column);
        var southEast = Value(field, row, column + 1);
        var northEast = Value(field, row + 1, column + 1);
        var northWest = Value(field, row + 1, column);
        var shape = (southWest >= level ? 1 : 0) | (southEast >= level ? 2 : 0) | (northEast >= level ? 4 : 0) | (northWest >= level ? 8 : 0);
        if (shape is 0 or 15)
        {
            return;
        }

        var south = EdgeAlongX(field, row, column);
        var north = EdgeAlongX(field, row + 1, column);
        var west = EdgeAlongY(field, row, column);
        var east = EdgeAlongY(field, row, column + 1);
        var middleIsHigh = (southWest + southEast + northEast + northWest) / 4 >= level;
        switch (shape)
        {
            case 1: links[south] = west; break;
            case 2: links[east] = south; break;
            case 3: links[east] = west; break;
            case 4: links[north] = east; break;
            case 5:
                links[south] = middleIsHigh ? east : west;
                links[north] = middleIsHigh ? west : east;
                break;
            case 6: links[north] = south; break;
            case 7: links[north] = west; break;
            case 8: links[west] = north; break;
            case 9: links[south] = north; break;
            case 10:
                links[west] = middleIsHigh ? south : north;
                links[east] = middleIsHigh ? north : south;
                break;
            case 11: links[east] = north; break;
            case 12: links[west] = east; break;
            case 13: links[south] = east; break;
            default: links[west] = south; break;
        }
    }

    private static List<List<Spot>> Walk(SquareField field, double level, Dictionary<int, int> links)
    {
        var rings = new List<List<Spot>>();
        // Sorted, so that the same field always gives the same rings in the same order.
        foreach (var start in links.Keys.Order().ToArray())
        {
            if (!links.ContainsKey(start))
            {
                continue;
            }

            var ring = new List<Spot>();
            for (var edge = start; links.Remove(edge, out var next); edge = next)
            {
                ring.Add(Crossing(field, level, edge));
            }

            rings.Add(ring);
        }

        return rings;
    }

    private static Spot Crossing(SquareField field, double level, int edge)
    {
        var node = edge / 2;
        var (row, column) = (node / field.Columns, node % field.Columns);
        var alongX = edge % 2 == 0;
        var first = Value(field, row, column);
        var second = alongX ? Value(field, row, column + 1) : Value(field, row + 1, column);
        var share = double.IsInfinity(first) ? 1 : double.IsInfinity(second) ? 0 : (level - first) / (second - first);
        return new Spot(
            field.FirstXMm + (column + (alongX ? share : 0)) * field.CellMm,
            field.FirstYMm + (row + (alongX ? 0 : share)) * field.CellMm);
    }

    private static double Value(SquareField field, int row, int column) =>
        row == 0 || column == 0 || row == field.Rows - 1 || column == field.Columns - 1
            ? double.NegativeInfinity
            : field.Values[row * field.Columns + column];

    private static int EdgeAlongX(SquareField field, int row, int column) => 2 * (row * field.Columns + column);

    private static int EdgeAlongY(SquareField field, int row, int column) => 2 * (row * field.Columns + column) + 1;
}

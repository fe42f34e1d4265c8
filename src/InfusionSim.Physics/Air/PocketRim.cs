using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Air;

/// <summary>The cells round a pocket that the front has passed the middle of but not filled: what gas they hold is sealed in too.</summary>
internal static class PocketRim
{
    private const double Dry = 0.5;

    /// <summary>Finds them. A cell with dry cells beside it that are not of the pocket keeps its gas to those: the front that seals the pocket runs on there.</summary>
    /// <param name="problem">Conductances between cells.</param>
    /// <param name="pocket">The pocket.</param>
    /// <param name="saturation">How full each cell is when it is sealed [-]. [rows × columns], x fastest.</param>
    public static IEnumerable<int> Of(FillProblem problem, Pocket pocket, double[] saturation)
    {
        HashSet<int> inside = [.. pocket.Cells], rim = [];
        foreach (int cell in pocket.Cells)
        {
            foreach (int beside in Beside(problem, cell))
                if (!inside.Contains(beside) && saturation[beside] < 1) rim.Add(beside);
        }

        return rim.Where(cell => Beside(problem, cell).All(beside => inside.Contains(beside) || saturation[beside] >= Dry)).Order();
    }

    private static IEnumerable<int> Beside(FillProblem problem, int cell)
    {
        int columns = problem.Operator.Columns;
        double[] east = problem.Operator.East, north = problem.Operator.North;
        if (east[cell] > 0) yield return cell + 1;
        if (cell % columns > 0 && east[cell - 1] > 0) yield return cell - 1;
        if (north[cell] > 0) yield return cell + columns;
        if (cell >= columns && north[cell - columns] > 0) yield return cell - columns;
    }
}

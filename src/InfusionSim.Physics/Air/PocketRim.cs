using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Air;

/// <summary>The cells round a pocket that the front has passed the middle of but not filled: what gas they hold is sealed in too.</summary>
internal static class PocketRim
{
    private const double Dry = 0.5;

    /// <summary>Finds them. A cell with dry cells beside it that are not of the pocket keeps its gas to those: the front that seals the pocket runs on there.</summary>
    /// <param name="problem">Conductances between cells.</param>
    /// <param name="pocket">The pocket.</param>
    /// <param name="saturation">How full each cell is when it is sealed [-]. [nodes].</param>
    public static IEnumerable<int> Of(FillProblem problem, Pocket pocket, double[] saturation)
    {
        HashSet<int> inside = [.. pocket.Cells], rim = [];
        AirWays ways = new(problem);
        foreach (int cell in pocket.Cells)
        {
            foreach (int beside in ways.From(cell))
                if (!inside.Contains(beside) && saturation[beside] < 1) rim.Add(beside);
        }

        return rim.Where(cell => ways.From(cell).All(beside => inside.Contains(beside) || saturation[beside] >= Dry)).Order();
    }
}

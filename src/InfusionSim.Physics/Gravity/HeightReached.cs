using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Gravity;

/// <summary>How high the resin stands where part of the panel lies too high for it.</summary>
internal static class HeightReached
{
    private const double FrontPassed = 0.5;

    /// <summary>Height above the lowest feed of the middle of the highest square the front has passed [m]; null when the drive could lift the resin to all of the part.</summary>
    /// <param name="problem">The panel as numbers.</param>
    /// <param name="state">The panel at the end.</param>
    public static double? Of(FillProblem problem, FillState state)
    {
        if (problem.Heads is not double[] heads || problem.Panel is not Panel panel) return null;
        double limit = problem.FeedPressures.Max();
        int[] part = [.. Enumerable.Range(0, problem.Operator.CellCount).Where(node => problem.PoreVolume[node] > 0 && problem.StaysInPart(node))];
        if (part.All(node => heads[node] < limit)) return null;
        int[] wet = [.. part.Where(node => state.Saturation[node] >= FrontPassed)];
        if (wet.Length == 0) return 0;
        int top = wet.MaxBy(node => heads[node]);
        return PlaneHeights.Of(panel.Slope, problem.Cells.CentroidOf(problem.CellOf(top))) - PlaneHeights.OfLowestFeed(panel);
    }
}

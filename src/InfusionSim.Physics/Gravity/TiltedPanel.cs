using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Network;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Gravity;

/// <summary>Lays a problem on its slope: pressures of the feeds from the level in their pots, and the head of each node.</summary>
public static class TiltedPanel
{
    /// <summary>The problem with the weight of its resin; the very same one when the panel and all pots are level.</summary>
    /// <remarks>
    /// A line fed from a pot with its level at z₀ stands at 1 − ρg(z − z₀)/Δp at the height z, and a way from the line at z to the middle of
    /// a cell at z′ takes another ρg(z′ − z)/Δp; so only the height of the cell's middle counts, not where in the cell the line lies. The sum does not
    /// change with the clock, so pots at other levels than the panel's need no march while the panel is level.
    /// A hose counts as lying level with the fitting it leads to, with all its rise between the pot and its own beginning.
    /// Through the thickness height is neglected: millimetres against metres.
    /// </remarks>
    /// <param name="problem">The problem of a panel.</param>
    /// <param name="gravity">Weight of the resin over the drive.</param>
    public static FillProblem Of(FillProblem problem, GravityHead gravity)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(gravity);
        if (problem.Panel is not Panel panel) throw new ArgumentException("Only a problem made from a panel knows its slope.", nameof(problem));
        double lowest = PlaneHeights.OfLowestFeed(panel);
        double[] pots = PlaneHeights.OfPots(panel);
        bool isLevel = panel.Slope is null || Math.Sin(panel.Slope.Angle) == 0;
        if (isLevel && pots.All(height => height == lowest)) return problem;
        FillProblem lifted = problem with { FeedPressures = [.. pots.Select((height, feed) => problem.FeedPressures[feed] + gravity.PerMetre * (height - lowest))] };
        return isLevel ? lifted : lifted with { Heads = HeadsOf(problem, panel, gravity, lowest) };
    }

    /// <summary>The same problem after the vacuum has been changed: the same columns of resin over another drive.</summary>
    /// <param name="problem">A problem with heads and pots, or without.</param>
    /// <param name="ratio">Drive that its heads were reckoned with over the drive now [-], above 0.</param>
    public static FillProblem WithDrive(FillProblem problem, double ratio)
    {
        ArgumentNullException.ThrowIfNull(problem);
        if (ratio == 1 || (problem.Heads is null && problem.FeedPressures.All(static pressure => pressure == 1))) return problem;
        return problem with
        {
            FeedPressures = [.. problem.FeedPressures.Select(pressure => 1 + ratio * (pressure - 1))],
            Heads = problem.Heads is double[] heads ? [.. heads.Select(head => ratio * head)] : null,
        };
    }

    private static double[] HeadsOf(FillProblem problem, Panel panel, GravityHead gravity, double lowest)
    {
        double[] heads = new double[problem.Operator.NodeCount];
        for (int node = 0; node < heads.Length; node++)
            heads[node] = gravity.PerMetre * (PlaneHeights.Of(panel.Slope, PlaceOf(problem, panel, node)) - lowest);
        return heads;
    }

    private static Point2 PlaceOf(FillProblem problem, Panel panel, int node)
    {
        int cell = problem.CellOf(node);
        if (cell >= 0) return problem.Cells.CentroidOf(cell);
        LineNode line = problem.Network[node];
        if (line.At is Point2 place) return place;
        return line.Part == LinePart.VentHose
            ? panel.Vents[line.Line].Hose!.JoinsAt ?? panel.Vents[line.Line].Path.Points[0]
            : PlaneHeights.FittingOf(panel.Feeds[line.Line]);
    }
}

using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Gravity;

/// <summary>Pots that stand lower than the vacuum lifts the resin.</summary>
/// <remarks>
/// From such a pot nothing comes, and where another feed presses resin up to its line it runs off into it as into a vent. Without another feed the cloth would
/// empty into the pot from the vents on, which is not computed.
/// </remarks>
internal static class LowPots
{
    /// <summary>Refuses by name when full cloth would empty into a pot.</summary>
    /// <param name="problem">The panel as numbers, with the clamps as they stand.</param>
    /// <param name="reached">Nodes that a feed presses on. [nodes].</param>
    /// <param name="start">The panel as the stretch begins.</param>
    /// <exception cref="ResinRunsBackException">When it would.</exception>
    public static void DemandNoneDraws(FillProblem problem, bool[] reached, FillStart start)
    {
        if (start.IsDry) return;
        for (int feed = 0; feed < problem.Feeds.Count; feed++)
        {
            IEnumerable<int> touched = problem.Feeds[feed].Contacts.Where(static contact => contact.LineNode < 0).Select(static contact => contact.Cell)
                .Concat(problem.Network.Sources.Where(source => source.Line == feed).Select(static source => source.Node));
            if (touched.Any(node => start.IsFull(node) && !reached[node] && problem.FeedPressures[feed] < (problem.Heads?[node] ?? 0)))
                throw new ResinRunsBackException(problem.Feeds[feed].Name, start.Clock);
        }
    }
}

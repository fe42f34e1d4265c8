using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Resins;

namespace InfusionSim.Planning.Resins;

/// <summary>Which resins share one flow.</summary>
public static class FlowGroups
{
    /// <summary>Groups resins by what the flow knows of them.</summary>
    /// <param name="resins">The resins.</param>
    /// <param name="bag">What drives them.</param>
    /// <param name="knowledge">What the flow knows.</param>
    /// <returns>Places of the resins in their list, group by group, each in its order. Where minutes count the group that is furthest by then comes first.</returns>
    public static IReadOnlyList<IReadOnlyList<int>> Of(IReadOnlyList<Resin> resins, Bag bag, FlowKnowledge knowledge)
    {
        ArgumentNullException.ThrowIfNull(resins);
        ArgumentNullException.ThrowIfNull(bag);
        ArgumentNullException.ThrowIfNull(knowledge);
        IEnumerable<IReadOnlyList<int>> groups = Enumerable.Range(0, resins.Count)
            .GroupBy(index => (Own: knowledge.Minutes ? index : 0, Density: knowledge.Weight ? resins[index].Density : 0))
            .Select(static group => (IReadOnlyList<int>)[.. group]);
        return [.. knowledge.Minutes ? groups.OrderByDescending(group => FluidityBy(resins[group[0]], bag, knowledge.FirstMinute)) : groups];
    }

    /// <summary>Whether a group's flow was followed for more than itself, or why not.</summary>
    /// <param name="group">The group.</param>
    /// <param name="groups">All groups, in the order in which they are followed.</param>
    /// <param name="knowledge">What the flow knows.</param>
    public static FlowSharing SharingOf(IReadOnlyList<int> group, IReadOnlyList<IReadOnlyList<int>> groups, FlowKnowledge knowledge)
    {
        ArgumentNullException.ThrowIfNull(group);
        ArgumentNullException.ThrowIfNull(groups);
        ArgumentNullException.ThrowIfNull(knowledge);
        if (groups.Count == 1) return FlowSharing.Shared;
        // The others go along with the first.
        if (knowledge.Minutes) return ReferenceEquals(group, groups[0]) && !knowledge.Weight ? FlowSharing.Shared : FlowSharing.AgainForMinutes;
        return group.Count > 1 ? FlowSharing.Shared : FlowSharing.AgainForWeight;
    }

    private static double FluidityBy(Resin resin, Bag bag, double time) => new DriveClock(resin, bag with { Steps = [] }).ClockAt(time);
}

using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Resins;

namespace InfusionSim.Planning.Resins;

/// <summary>Which resins share one flow.</summary>
public static class FlowGroups
{
    /// <summary>Groups resins by what the flow knows of them.</summary>
    /// <param name="resins">The resins.</param>
    /// <param name="knowledge">What the flow knows.</param>
    /// <returns>Places of the resins in their list, group by group, each in its order.</returns>
    public static IReadOnlyList<IReadOnlyList<int>> Of(IReadOnlyList<Resin> resins, FlowKnowledge knowledge)
    {
        ArgumentNullException.ThrowIfNull(resins);
        ArgumentNullException.ThrowIfNull(knowledge);
        return [.. Enumerable.Range(0, resins.Count)
            .GroupBy(index => (Own: knowledge.Minutes ? index : 0, Density: knowledge.Weight ? resins[index].Density : 0))
            .Select(static group => (IReadOnlyList<int>)[.. group])];
    }

    /// <summary>Whether a group's flow was followed for more than itself, or why not.</summary>
    /// <param name="group">The group.</param>
    /// <param name="groups">How many groups there are [-].</param>
    /// <param name="knowledge">What the flow knows.</param>
    public static FlowSharing SharingOf(IReadOnlyList<int> group, int groups, FlowKnowledge knowledge)
    {
        ArgumentNullException.ThrowIfNull(group);
        ArgumentNullException.ThrowIfNull(knowledge);
        if (groups == 1) return FlowSharing.Shared;
        return knowledge.Minutes ? FlowSharing.AgainForMinutes : group.Count > 1 ? FlowSharing.Shared : FlowSharing.AgainForWeight;
    }
}

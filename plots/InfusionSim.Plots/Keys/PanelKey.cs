using InfusionSim.Protocol.V1;

namespace InfusionSim.Plots.Keys;

/// <summary>Which signs a panel picture uses.</summary>
internal static class PanelKey
{
    /// <summary>The signs in the order of the key.</summary>
    internal static IReadOnlyList<KeySign> Signs(InfusionPlan plan, bool drySpots, bool neverReached, bool last)
    {
        var signs = new List<KeySign>();
        Add(KeySign.Feed, plan.Feeds.Count > 0);
        Add(KeySign.Vent, plan.Vents.Any(vent => vent.Kind != VentKind.Membrane));
        Add(KeySign.Membrane, plan.Vents.Any(vent => vent.Kind == VentKind.Membrane && vent.Path.Points.Count > 1));
        Add(KeySign.MembraneFitting, plan.Vents.Any(vent => vent.Kind == VentKind.Membrane && vent.Path.Points.Count == 1));
        Add(KeySign.TimingMark, plan.TimingMarks.Count > 0);
        Add(KeySign.LastPlace, last);
        Add(KeySign.DrySpot, drySpots);
        Add(KeySign.NeverReached, neverReached);
        return signs;

        void Add(KeySign sign, bool isUsed)
        {
            if (isUsed)
            {
                signs.Add(sign);
            }
        }
    }
}

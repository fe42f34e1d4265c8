using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Checks that the permeabilities in the plane do not differ more than the flow is tested for.</summary>
internal static class AnisotropyCheck
{
    /// <summary>Checks every permeability of a plan whose defaults are filled in.</summary>
    public static void Run(InfusionPlan plan, FaultList faults)
    {
        foreach (MessageWalk.Place place in MessageWalk.Fields(plan))
        {
            if (place.Message is not Permeability permeability || place.Field.FieldNumber != Permeability.K2M2FieldNumber) continue;
            if (!permeability.HasK1M2 || !permeability.HasK2M2 || faults.HasUnder(place.Path[..^5])) continue;
            double k1 = permeability.K1M2, k2 = permeability.K2M2, most = PlanLimits.MostAnisotropy;
            double ratio = Math.Max(k1, k2) / Math.Min(k1, k2);
            if (!(ratio > most * (1 + 1e-9))) continue;
            faults.Add(place.Path, $"{place.Path} is {Numbers.Say(k2)} m², and k1M2 is {Numbers.Say(k1)} m²: {Numbers.Say(Numbers.Rounded(ratio, 3))} to 1. "
                + $"They may differ {Numbers.Say(most)} times at most; beside k1M2 {Numbers.Say(k1)} it must lie between {Numbers.Say(k1 / most)} and {Numbers.Say(k1 * most)} m².");
        }
    }
}

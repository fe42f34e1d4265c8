using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Resins;

/// <summary>Checks that a contact angle comes with a surface tension.</summary>
internal static class WettingCheck
{
    /// <summary>Checks the resin of a plan.</summary>
    public static void Run(InfusionPlan plan, FaultList faults)
    {
        if (plan.Resin is not { HasContactAngleDeg: true, HasSurfaceTensionMnPerM: false } resin || faults.HasUnder("resin.surfaceTensionMnPerM")) return;
        faults.Add("resin.contactAngleDeg", $"resin.contactAngleDeg is {Numbers.Say(resin.ContactAngleDeg)}°, but resin.surfaceTensionMnPerM is missing: "
            + "the capillary number needs both. Give the surface tension, 25 to 50 mN/m for most resins, or leave the angle out.");
    }
}

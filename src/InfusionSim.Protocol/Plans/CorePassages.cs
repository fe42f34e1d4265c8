using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Checks that grooves and holes fit into their core.</summary>
internal static class CorePassages
{
    /// <summary>Checks the cores of a plan.</summary>
    public static void Run(InfusionPlan plan, FaultList faults)
    {
        for (int k = 0; k < plan.Cores.Count; k++)
        {
            string path = $"cores[{k}]";
            if (faults.HasUnder(path)) continue;
            CheckShare(plan, k, path + ".toolSkinFraction", faults);
            string name = LayerPresence.Called("core", plan.Cores[k].Name, path);
            if (plan.Cores[k].Grooves is Grooves grooves) CheckGrooves(plan.Cores[k], grooves, path + ".grooves", name, faults);
            if (plan.Cores[k].Holes is Holes holes && holes.DiameterMm >= holes.PitchMm)
                faults.Add(path + ".holes.diameterMm", $"holes of {name} are {Numbers.Say(holes.DiameterMm)} mm wide and {Numbers.Say(holes.PitchMm)} mm apart; diameterMm must be below pitchMm, {Numbers.Say(holes.PitchMm)} mm. pitchMm counts from middle to middle.");
        }
    }

    private static void CheckShare(InfusionPlan plan, int core, string path, FaultList faults)
    {
        double first = plan.Cores[0].ToolSkinFraction, own = plan.Cores[core].ToolSkinFraction;
        if (own == first) return;
        faults.Add(
            path,
            $"core '{plan.Cores[core].Name}' lies above {Numbers.Say(own)} of the lay-up and core '{plan.Cores[0].Name}' above {Numbers.Say(first)}; this version computes cores at one height only. Give all of them one toolSkinFraction.",
            ErrorReason.NotComputedYet);
    }

    private static void CheckGrooves(Core core, Grooves grooves, string path, string name, FaultList faults)
    {
        if (grooves.WidthMm >= grooves.PitchMm)
            faults.Add(path + ".widthMm", $"grooves of {name} are {Numbers.Say(grooves.WidthMm)} mm wide and {Numbers.Say(grooves.PitchMm)} mm apart; widthMm must be below pitchMm, {Numbers.Say(grooves.PitchMm)} mm. pitchMm counts from middle to middle.");
        if (grooves.DepthMm > core.ThicknessMm)
            faults.Add(path + ".depthMm", $"grooves of {name} are {Numbers.Say(grooves.DepthMm)} mm deep, and the core is {Numbers.Say(core.ThicknessMm)} mm thick; depthMm must be at most {Numbers.Say(core.ThicknessMm)} mm.");
    }
}

using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Checks what the mix ratio of the resin says together.</summary>
internal static class MixCheck
{
    /// <summary>How far the density of the mixed resin may be from what its components make it, as a share of it [-], before a warning asks (our own judgement).</summary>
    private const double OddDensity = 0.05;

    private const string Ratio = "resin.mixRatio";

    /// <summary>Checks the mix ratio of a plan.</summary>
    public static void Run(InfusionPlan plan, FaultList faults, List<string> warnings)
    {
        if (plan.Resin?.MixRatio is not MixRatio ratio) return;
        if (ratio.HasPartsByMass && ratio.HasPartsByVolume)
            faults.Add(Ratio + ".partsByVolume", $"{Ratio} gives both partsByMass and partsByVolume; give the one that you measure out by.");
        if (!ratio.HasPartsByMass && !ratio.HasPartsByVolume && !faults.HasUnder(Ratio))
            faults.Add(Ratio, $"{Ratio} gives no ratio; give partsByMass, the parts of hardener to 100 parts of resin by weight, for example {{ \"partsByMass\": 30 }}.");
        if (!ratio.HasPartsByVolume) return;
        Need(ratio.HasResinDensityKgPerM3, "resinDensityKgPerM3", "the resin before mixing");
        Need(ratio.HasHardenerDensityKgPerM3, "hardenerDensityKgPerM3", "the hardener");
        if (!faults.HasUnder("resin")) WarnOfDensity(plan.Resin, ratio, warnings);

        void Need(bool isThere, string key, string what)
        {
            if (isThere || faults.HasAt($"{Ratio}.{key}")) return;
            faults.Add($"{Ratio}.{key}", $"{Ratio} is by volume, and a volume has no weight without a density: give {key}, that of {what}, or give partsByMass instead.");
        }
    }

    // Volumes of the two are taken to add up.
    private static void WarnOfDensity(Resin resin, MixRatio ratio, List<string> warnings)
    {
        double hardener = ratio.PartsByVolume / 100;
        double mixed = (ratio.ResinDensityKgPerM3 + hardener * ratio.HardenerDensityKgPerM3) / (1 + hardener);
        if (!(Math.Abs(resin.DensityKgPerM3 - mixed) > OddDensity * mixed)) return;
        warnings.Add($"resin.densityKgPerM3 is {Numbers.Say(resin.DensityKgPerM3)} kg/m³, but resin and hardener in this ratio come to about {Numbers.Say(Math.Round(mixed))} kg/m³. Look at the three densities again.");
    }
}

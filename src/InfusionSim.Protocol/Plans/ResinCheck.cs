using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Checks what the resin's numbers say together.</summary>
internal static class ResinCheck
{
    /// <summary>Viscosity above which a warning asks whether the unit is right [Pa·s]; infusion resins lie near 0.1 to 1 (common practice).</summary>
    private const double ThickPaS = 5;

    /// <summary>Checks the resin of a plan whose defaults are filled in.</summary>
    public static void Run(InfusionPlan plan, FaultList faults, List<string> warnings)
    {
        if (plan.Resin is not Resin resin) return;
        if (resin is { HasGelTimeMin: true, HasMixToOpenMin: true } && !faults.HasUnder("resin.gelTimeMin") && !faults.HasUnder("resin.mixToOpenMin")
            && resin.MixToOpenMin >= resin.GelTimeMin)
        {
            faults.Add("resin.mixToOpenMin", $"resin.mixToOpenMin is {Numbers.Say(resin.MixToOpenMin)} min, but the resin gels {Numbers.Say(resin.GelTimeMin)} min after mixing: "
                + $"it is solid before the feed opens. It must be below {Numbers.Say(resin.GelTimeMin)} min; open earlier or take a slower resin.");
        }

        if (resin.HasViscosityPaS && resin.ViscosityPaS is > ThickPaS and <= 100)
        {
            warnings.Add($"resin.viscosityPaS is {Numbers.Say(resin.ViscosityPaS)}: very thick for an infusion (mostly 0.1 to 1). "
                + $"If the data sheet says {Numbers.Say(resin.ViscosityPaS)} mPa·s, write {Numbers.Say(resin.ViscosityPaS / 1000)}.");
        }
    }
}

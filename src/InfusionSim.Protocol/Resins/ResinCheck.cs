using InfusionSim.Numerics.Integration;
using InfusionSim.Physics.Clock;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Resins;

/// <summary>Checks what the numbers of the resin card say together, and with the warmth of the shop.</summary>
internal static class ResinCheck
{
    /// <summary>Viscosity above which a warning asks whether the unit is right [Pa·s]; infusion resins lie near 0.1 to 1 (common practice).</summary>
    private const double ThickPaS = 5;

    /// <summary>Viscosity above which nothing is infused [Pa·s].</summary>
    private const double ThickestPaS = 100;

    /// <summary>Checks the resin of a plan whose defaults are filled in.</summary>
    public static void Run(InfusionPlan plan, FaultList faults, List<string> warnings)
    {
        if (plan.Resin is Resin resin)
        {
            ViscosityCheck.Run(resin, faults, warnings);
            if (resin.Kinetics is not null) KineticsCheck.Run(resin.Kinetics, faults);
            CheckGelIsKnown(resin, faults);
        }

        ShopCheck.Run(plan, faults, warnings);
        if (plan.Resin is null) return;
        if (!faults.HasUnder("resin") && !faults.HasUnder("shop")) CheckOpening(plan, faults);
        if (plan.Resin is { HasViscosityPaS: true, ViscosityPaS: > ThickPaS and <= ThickestPaS } thick)
        {
            warnings.Add($"resin.viscosityPaS is {Numbers.Say(thick.ViscosityPaS)}: very thick for an infusion (mostly 0.1 to 1). "
                + $"If the data sheet says {Numbers.Say(thick.ViscosityPaS)} mPa·s, write {Numbers.Say(thick.ViscosityPaS / 1000)}.");
        }
    }

    private static void CheckGelIsKnown(Resin resin, FaultList faults)
    {
        bool hasStated = resin.HasGelTimeMin || resin.HasPotLifeMin;
        if (!hasStated && resin.Kinetics is null && resin.ViscosityCurve is null && !faults.HasUnder("resin.gelTimeMin"))
            faults.Add("resin.gelTimeMin", "resin.gelTimeMin is missing; give it in min, for example \"gelTimeMin\": 60, or potLifeMin, a viscosityCurve up to gel, or kinetics.");
        foreach ((bool isThere, string key) in ((bool, string)[])[(resin.HasGelTimeAtDegC, "gelTimeAtDegC"), (resin.HasGelTimeMassG, "gelTimeMassG"), (resin.HasGelTimeActivationKjPerMol, "gelTimeActivationKjPerMol")])
        {
            if (isThere && !hasStated && !faults.HasUnder("resin.gelTimeMin") && !faults.HasUnder("resin.potLifeMin"))
                faults.Add($"resin.{key}", $"resin.{key} speaks of gelTimeMin, which is not there. Give it, or leave {key} out.");
        }
    }

    // Gel and viscosity on the way follow from several numbers together, so they are worked out as the forecast will.
    private static void CheckOpening(InfusionPlan plan, FaultList faults)
    {
        DriveClock clock;
        try
        {
            clock = new(ResinMapping.ToResin(plan), new Physics.Clock.Bag(0, 1));
        }
        catch (StiffEquationsException)
        {
            faults.Add("resin.kinetics", "resin.kinetics are too fast to be followed. Look at the factors (per second, not per minute) and activations (kJ/mol).");
            return;
        }

        double gelMin = (clock.GelTime + UnitConversion.SecondsFromMin(plan.Resin.MixToOpenMin)) / 60, open = plan.Resin.MixToOpenMin;
        IReadOnlyList<(string Path, double DegC)> temperatures = ShopCheck.Temperatures(plan.Shop);
        string warmth = temperatures.Count == 1 ? $" at {Numbers.Say(temperatures[0].DegC)} °C" : "";
        if (!(clock.GelTime > 0))
        {
            string gel = Numbers.Say(Numbers.Rounded(gelMin, 4));
            faults.Add("resin.mixToOpenMin", $"resin.mixToOpenMin is {Numbers.Say(open)} min, but the resin gels {gel} min after mixing{warmth}: "
                + $"it is solid before the feed opens. It must be below {gel} min; open earlier or take a slower resin.");
        }
        else if (double.IsPositiveInfinity(clock.GelTime))
        {
            faults.Add("resin.kinetics", $"resin.kinetics never reach the gel point{warmth}, not in 115 days. Look at the factors (per second, not per minute) and activations (kJ/mol), or infuse warmer.");
        }
        else if (clock.ViscosityAt(0) > ThickestPaS)
        {
            faults.Add(temperatures.Count > 0 ? temperatures[0].Path : "resin.mixToOpenMin", $"The resin is {Numbers.Figures(clock.ViscosityAt(0), 3)} Pa·s thick when the feed opens{warmth}; nothing above {Numbers.Say(ThickestPaS)} Pa·s can be infused. Infuse warmer or open sooner after mixing.");
        }
    }
}

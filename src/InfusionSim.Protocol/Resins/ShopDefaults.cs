using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Resins;

/// <summary>How warm the shop is where the plan does not say.</summary>
public static class ShopDefaults
{
    /// <summary>Temperature of the shop where the resin card speaks of temperatures and the plan names none [°C] (common practice).</summary>
    public const double TemperatureDegC = 20;

    /// <summary>Fills in the temperature where the card cannot be used without one.</summary>
    /// <param name="plan">The plan; changed in place.</param>
    public static void FillIn(InfusionPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        if (plan.Resin is not Resin resin || !SpeaksOfTemperatures(resin) || plan.Shop is { HasTemperatureDegC: true } or { Temperatures.Count: > 0 }) return;
        plan.Shop ??= new Shop();
        plan.Shop.TemperatureDegC = resin.ViscosityCurve is { HasAtDegC: true } curve ? curve.AtDegC : TemperatureDegC;
    }

    private static bool SpeaksOfTemperatures(Resin resin) =>
        resin.HasViscosityAtDegC || resin.ViscosityTemperatures.Count > 0 || resin.HasGelTimeAtDegC || resin.Kinetics is not null
        || resin.ViscosityCurve is { HasAtDegC: true } || resin.ViscosityRise is { HasAtDegC: true } or { HasFactorPerS: true };
}

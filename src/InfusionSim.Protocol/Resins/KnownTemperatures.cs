using InfusionSim.Planning.Resins;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Resins;

/// <summary>The temperatures between which a resin card can be asked for the best one.</summary>
public static class KnownTemperatures
{
    // A number without a temperature of its own was measured in this shop; as far from it as the rule of thumb is trusted.
    private const double ByRuleDegC = 5;

    // Laws without a range of their own hold about as far (common practice).
    private const double ByLawDegC = 10;

    // A narrower range is no choice.
    private const double NarrowestDegC = 1;

    /// <summary>The range that all numbers of the card are good for; null where the card knows one viscosity only, or where its numbers were measured too far apart.</summary>
    /// <param name="plan">The plan with the card as its resin, sound and with its defaults.</param>
    public static TemperatureRange? Of(InfusionPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        Resin card = plan.Resin;
        if (!KnowsWarmth(card) || card.ViscosityCurve is not null || ShopCheck.Temperatures(plan.Shop) is not [(_, double shop), ..]) return null;
        (double low, double high) = (shop - ByLawDegC, shop + ByLawDegC);
        MeasuredRange[] measured = [.. MeasuredRange.Of(card)];
        if (measured.Length > 0) (low, high) = (measured.Max(static range => range.FromDegC - range.TrustedDegC), measured.Min(static range => range.ToDegC + range.TrustedDegC));
        if (ResinMapping.StatedGelMin(card) is not null && !card.HasGelTimeAtDegC && card.Kinetics is null)
            (low, high) = (Math.Max(low, shop - ByRuleDegC), Math.Min(high, shop + ByRuleDegC));
        return high - low < NarrowestDegC ? null : new TemperatureRange(UnitConversion.KelvinFromDegC(low), UnitConversion.KelvinFromDegC(high));
    }

    private static bool KnowsWarmth(Resin card) =>
        card.ViscosityTemperatures.Count > 1 || card.HasViscosityActivationKjPerMol || card.ViscosityRise is { HasActivationKjPerMol: true } || card.Kinetics is not null;
}

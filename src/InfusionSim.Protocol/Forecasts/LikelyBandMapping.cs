using InfusionSim.Protocol.Units;
using Contract = InfusionSim.Protocol.V1;
using Domain = InfusionSim.Physics.Forecasts;

namespace InfusionSim.Protocol.Forecasts;

/// <summary>Turns the likely band into the contract's and says where it comes from.</summary>
internal static class LikelyBandMapping
{
    /// <summary>Maps the band.</summary>
    public static Contract.LikelyBand ToContract(Domain.LikelyBand band, Contract.InfusionPlan plan)
    {
        var answer = new Contract.LikelyBand { Basis = BasisOf(band.PermeabilityFactor, plan) };
        if (Kept(band.FillTimeFrom) is double from) answer.FillTimeFromS = from;
        if (Kept(band.FillTimeTo) is double to) answer.FillTimeToS = to;
        if (Kept(band.GelMarginFrom) is double marginFrom) answer.GelMarginFromRatio = marginFrom;
        if (Kept(band.GelMarginTo) is double marginTo) answer.GelMarginToRatio = marginTo;
        return answer;
    }

    private static string BasisOf(double factor, Contract.InfusionPlan plan) => factor > 1
        ? $"two shots in three, with the permeability of the cloth as a whole uncertain by ×/÷{Numbers.Say(factor)} (preform.permeabilityFactor); the pattern stays, only the minutes stretch{Estimate(plan)}"
        : "the permeability of the cloth is taken as exact (preform.permeabilityFactor is 1): no band";

    // A slope stretches with the cloth: weight and pressure drive through the same permeability. Hoses and gaps do not, and
    // the fill is not computed again for the two ends of the band.
    private static string Estimate(Contract.InfusionPlan plan)
    {
        bool hasLines = plan.Feeds.Any(feed => feed.HasBoreMm || feed.Hose is not null) || plan.Vents.Any(vent => vent.HasBoreMm || vent.Hose is not null)
            || plan.Pots.Any(pot => pot.Hose is not null);
        string what = (hasLines, plan.Gaps.Count > 0) switch
        {
            (true, true) => "hoses, lines and gaps",
            (true, false) => "hoses and lines",
            (false, true) => "gaps",
            _ => "",
        };
        return what.Length == 0 ? "" : $"; an estimate here, for {what} do not stretch with the cloth";
    }

    private static double? Kept(double? value) => Finite.OrNone(value) is double number ? UnitConversion.Kept(number) : null;
}

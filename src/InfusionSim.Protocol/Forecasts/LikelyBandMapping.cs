using InfusionSim.Protocol.Units;
using Contract = InfusionSim.Protocol.V1;
using Domain = InfusionSim.Physics.Forecasts;

namespace InfusionSim.Protocol.Forecasts;

/// <summary>Turns the likely band into the contract's and says where it comes from.</summary>
internal static class LikelyBandMapping
{
    /// <summary>Maps the band.</summary>
    public static Contract.LikelyBand ToContract(Domain.LikelyBand band)
    {
        var answer = new Contract.LikelyBand { Basis = BasisOf(band.PermeabilityFactor) };
        if (Kept(band.FillTimeFrom) is double from) answer.FillTimeFromS = from;
        if (Kept(band.FillTimeTo) is double to) answer.FillTimeToS = to;
        if (Kept(band.GelMarginFrom) is double marginFrom) answer.GelMarginFromRatio = marginFrom;
        if (Kept(band.GelMarginTo) is double marginTo) answer.GelMarginToRatio = marginTo;
        return answer;
    }

    private static string BasisOf(double factor) => factor > 1
        ? $"two shots in three, with the permeability of the cloth as a whole uncertain by ×/÷{Numbers.Say(factor)} (preform.permeabilityFactor); the pattern stays, only the minutes stretch"
        : "the permeability of the cloth is taken as exact (preform.permeabilityFactor is 1): no band";

    private static double? Kept(double? value) => Finite.OrNone(value) is double number ? UnitConversion.Kept(number) : null;
}

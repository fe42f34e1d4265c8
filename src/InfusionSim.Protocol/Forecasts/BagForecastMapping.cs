using InfusionSim.Physics.Vacuum;
using InfusionSim.Protocol.Units;
using Contract = InfusionSim.Protocol.V1;
using Domain = InfusionSim.Physics.Forecasts;

namespace InfusionSim.Protocol.Forecasts;

/// <summary>Turns what becomes of the vacuum into the contract's.</summary>
internal static class BagForecastMapping
{
    /// <summary>Maps it; null when nothing is known of leak and volatiles.</summary>
    public static Contract.BagForecast? ToContract(Domain.BagForecast forecast, Physics.Clock.Bag bag)
    {
        if (bag.Leak is null && forecast.BoilsBelow is null) return null;
        var answer = new Contract.BagForecast { BoilingIsExtrapolated = forecast.BoilingIsExtrapolated };
        if (bag.Leak is GasLeak leak)
        {
            answer.LeakMbarLPerS = UnitConversion.MbarLPerSFromThroughput(Finite.Needed(leak.Throughput, "the leak"));
            if (Finite.OrNone(forecast.PoresFilledIn) is double filled) answer.LeakFillsPoresS = UnitConversion.Kept(filled);
            answer.LeakCm3PerMin = UnitConversion.Kept(leak.StandardCubicCentimetresPerMinute);
        }

        if (Finite.OrNone(forecast.Held) is double held) answer.HeldMbarAbs = UnitConversion.MbarFromPascal(held);
        if (Finite.OrNone(forecast.PumpDown) is double time) answer.PumpDownS = UnitConversion.Kept(time);
        if (Finite.OrNone(forecast.DryCloth) is double dry) answer.DryClothMbarAbs = UnitConversion.MbarFromPascal(dry);
        if (Finite.OrNone(forecast.BoilsBelow) is double limit) answer.BoilsBelowMbarAbs = UnitConversion.MbarFromPascal(limit);
        return answer;
    }
}

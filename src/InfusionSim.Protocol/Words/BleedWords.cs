using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Words;

/// <summary>The line about bleeding: how long the vents are left open after the panel is full, what that costs, and how large the catch pot should be.</summary>
internal static class BleedWords
{
    private const double Rounding = 1e-6;

    /// <summary>The line; none when no vent passes resin after the end.</summary>
    public static IEnumerable<FillLine> Lines(FillForecast forecast, InfusionPlan plan)
    {
        if (forecast.AfterFront is not AfterFront after) yield break;
        yield return new FillLine("Bleed", $"{Until(after, forecast, after.Vents.Count == 1 ? after.Vents[0].Name : "the vents", plan)}. Catch pot {CatchPot(after)}");
    }

    private static string Until(AfterFront after, FillForecast forecast, string which, InfusionPlan plan)
    {
        if (after.AirStays) return WithAir(after, which);
        string time = Amounts.Time(after.ClampTimeS), cost = after.UntilClampedG < 0.05 ? "" : $", {Amounts.Weight(after.UntilClampedG)} more";
        if (after.HasLastResinOutTimeS && after.LastResinOutTimeS <= after.ClampTimeS * (1 + Rounding)) return $"until {time}{Band(after)}, then clamp {which}: what filled last is out by then{cost}";
        if (after.LeftWhenClampedFraction == 0) return $"clamp {which} as soon as it is full, at {time}: what filled last stands still and does not come out";
        string until = Amounts.Time(forecast.GelTimeS) == time ? $"until just before it gels at {time}" : $"until {time}";
        string stays = after.HasLastResinOutTimeS ? "comes slowly or stays in" : "stays in";
        string rest = after.StaysAt is Point at ? $", the rest {stays} ({PlaceWords.Of(at, plan)})" : "";
        return $"{until}, then clamp {which}: {Amounts.Percent(after.LeftWhenClampedFraction)} of what filled last is out by then{rest}{cost}";
    }

    private static string WithAir(AfterFront after, string which)
    {
        string cost = after.ResinOutGPerMin < 0.05 ? "" : $", it costs {Amounts.Weight(after.ResinOutGPerMin)} a minute";
        return $"clamp {which} as soon as the rest is full, at {Amounts.Time(after.ClampTimeS)}: waiting does not draw the trapped air out{cost}";
    }

    private static string Band(AfterFront after)
    {
        if (!after.HasLastResinOutTimeFromS || after.LastResinOutTimeFromS == after.LastResinOutTimeS) return "";
        return after.HasLastResinOutTimeToS
            ? $" (two shots in three: {Amounts.TimeRange(after.LastResinOutTimeFromS, after.LastResinOutTimeToS)})"
            : $" (two shots in three: from {Amounts.Time(after.LastResinOutTimeFromS)} to gelling first)";
    }

    private static string CatchPot(AfterFront after)
    {
        bool isLitres = after.CatchPotToCm3 >= 1000;
        (double least, double ample) = isLitres ? (after.CatchPotFromCm3 / 1000, after.CatchPotToCm3 / 1000) : (after.CatchPotFromCm3, after.CatchPotToCm3);
        return $"{Numbers.Figures(least, 2)} to {Numbers.Figures(ample, 2)} {(isLitres ? "l" : "cm³")}";
    }
}

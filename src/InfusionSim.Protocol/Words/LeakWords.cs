using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Words;

/// <summary>What a leak does to air that no pump draws off: where it is fast enough, that air drives the resin out again.</summary>
internal static class LeakWords
{
    /// <summary>Whether air stays trapped and the leak would fill all pores before gel.</summary>
    public static bool DrivesResinOut(FillForecast forecast) =>
        forecast is { Outcome: Outcome.TrapsAir, Bag.HasLeakFillsPoresS: true } && forecast.Bag.LeakFillsPoresS < forecast.GelTimeS;

    /// <summary>How fast that is.</summary>
    public static string Pace(FillForecast forecast) => $"the leak would fill all pores with air in {Amounts.Time(forecast.Bag.LeakFillsPoresS)}";
}

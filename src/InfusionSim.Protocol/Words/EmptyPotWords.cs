using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Words;

/// <summary>What is said of a pot that is empty too soon.</summary>
internal static class EmptyPotWords
{
    /// <summary>The sentence: which pot, when, and how much more it takes.</summary>
    public static string RunsDry(Finding finding, FillForecast forecast, InfusionPlan plan)
    {
        string when = finding.HasTimeS ? $" at {Amounts.Time(finding.TimeS)}" : "";
        string more = finding is { HasAmount: true, Amount: > 0 }
            ? $"; the rest takes {Amounts.Weight(finding.Amount * plan.Resin.DensityKgPerM3 / 1000)} ({Amounts.Volume(finding.Amount)}) more"
            : "";
        return $"The pot of {NameOf(finding.Line, plan)} is empty{when} with {Amounts.Percent(forecast.FilledFraction)} of the cloth full{more}. "
            + "Mix more, or shut its feed before it sucks air.";
    }

    // A feed names its pot; others on the same pot are out of resin with it.
    private static string NameOf(string line, InfusionPlan plan)
    {
        string pot = plan.Feeds.FirstOrDefault(feed => feed.Name == line)?.Pot ?? "";
        string[] feeds = pot.Length == 0 ? [line.Length > 0 ? line : "a feed"] : [.. plan.Feeds.Where(feed => feed.Pot == pot).Select(static feed => feed.Name)];
        return feeds.Length == 1 ? feeds[0] : $"{string.Join(", ", feeds[..^1])} and {feeds[^1]}";
    }
}

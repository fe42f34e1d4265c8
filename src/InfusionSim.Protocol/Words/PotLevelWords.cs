using InfusionSim.Physics.Vacuum;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Words;

/// <summary>What is said of a pot that stands too low for the vacuum.</summary>
internal static class PotLevelWords
{
    /// <summary>How low it stands and how high the vacuum lifts the resin.</summary>
    /// <param name="line">The feed that draws from it.</param>
    /// <param name="plan">The plan, with all defaults filled in.</param>
    public static string TooLow(string line, InfusionPlan plan)
    {
        string? name = plan.Feeds.FirstOrDefault(feed => feed.Name == line)?.Pot;
        double below = -plan.Pots.FirstOrDefault(pot => pot.Name == name)?.LevelMm ?? 0;
        double weakest = plan.Bag.Steps.Select(static step => step.PressureMbarAbs).Append(plan.Bag.PressureMbarAbs).Max();
        double lift = SuctionHead.HighestLift(plan.Resin.DensityKgPerM3, UnitConversion.PascalFromMbar(plan.Bag.AmbientMbarAbs - weakest));
        string vacuum = plan.Bag.Steps.Count > 0 ? "the weakest vacuum" : "this vacuum";
        return $"The pot of {line} stands {Amounts.Length(below)} below the feed, and {vacuum} lifts the resin {Amounts.Length(UnitConversion.MmFromMetres(lift))}: none comes from it.";
    }
}

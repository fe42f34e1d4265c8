using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Words;

/// <summary>Says when a clamp is turned or the vacuum is changed.</summary>
internal static class MomentWords
{
    /// <summary>When, as a part of a sentence: "at 5 min", "when M1 is reached", "when resin shows in V1", "when full".</summary>
    public static string When(Moment moment, InfusionPlan plan)
    {
        if (moment.HasAtMin) return $"at {Amounts.Time(60 * moment.AtMin)}";
        if (moment.WhenReached.Length == 0) return "when full";
        return plan.TimingMarks.All(mark => mark.Name != moment.WhenReached) && plan.Vents.Any(vent => vent.Name == moment.WhenReached)
            ? $"when resin shows in {moment.WhenReached}"
            : $"when {moment.WhenReached} is reached";
    }

    /// <summary>Why it never came: "M1 is not reached".</summary>
    public static string WhyNever(Moment moment, InfusionPlan plan)
    {
        if (moment.HasAtMin) return $"all is over before {Numbers.Say(moment.AtMin)} min";
        if (moment.WhenReached.Length == 0) return "it is not full";
        return When(moment, plan).StartsWith("when resin", StringComparison.Ordinal)
            ? $"no resin shows in {moment.WhenReached}"
            : $"{moment.WhenReached} is not reached";
    }
}

using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Clamps;

/// <summary>Everything that is to be done with clamps and vacuum during an infusion.</summary>
/// <param name="Start">The clamps as the first feed opens.</param>
/// <param name="Rules">What is done, each once.</param>
/// <param name="ClockAt">Drive clock at a time [s → -], given the drive clocks of the moments that have come.</param>
public sealed record ClampRules(LineClamps Start, IReadOnlyList<ClampRule> Rules, Func<double, Func<Moment, double>, double> ClockAt)
{
    /// <summary>Whether nothing is ever done and all clamps are open.</summary>
    public bool AreNone => Rules.Count == 0 && Start.AreAllOpen;

    /// <summary>The rules of a panel and its bag.</summary>
    /// <param name="panel">Cloth and line plan.</param>
    /// <param name="bag">The bag.</param>
    /// <param name="clockAt">Drive clock at a time [s → -], given the drive clocks of the moments that have come, +∞ for the others.</param>
    public static ClampRules Of(Panel panel, Bag bag, Func<double, Func<Moment, double>, double> clockAt)
    {
        ArgumentNullException.ThrowIfNull(panel);
        ArgumentNullException.ThrowIfNull(bag);
        return new(
            LineClamps.AtStart(panel),
            [
                .. panel.Feeds.SelectMany(static (feed, k) => feed.Clamp.Steps.Select(step => new ClampRule(step.When, false, k, step.OpenFraction))),
                .. panel.Vents.SelectMany(static (vent, k) => vent.Clamp.Steps.Select(step => new ClampRule(step.When, true, k, step.OpenFraction))),
                .. bag.Steps.Select(static step => new ClampRule(step.When, false, -1, step.Pressure)),
            ],
            clockAt);
    }
}

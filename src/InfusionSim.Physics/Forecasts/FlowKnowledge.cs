using InfusionSim.Physics.Clamps;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Forecasts;

/// <summary>What the flow of a panel knows of the resin in it: where it knows nothing, one flow serves every resin.</summary>
/// <param name="Minutes">Whether something is done at a time on the clock on the wall, or a leak goes on filling what is cut off.</param>
/// <param name="Weight">Whether the weight of the resin counts: a slope, or a pot that stands higher or lower than the feed.</param>
public sealed record FlowKnowledge(bool Minutes, bool Weight)
{
    /// <summary>Time from opening at which it first shows which resin it is [s]; +∞ when that is not a minute that is set.</summary>
    public double FirstMinute { get; private init; } = double.PositiveInfinity;

    /// <summary>Whether the same flow serves every resin under the same bag.</summary>
    public bool IsNone => !Minutes && !Weight;

    /// <summary>Looks through a panel and its bag.</summary>
    /// <param name="panel">Cloth and line plan.</param>
    /// <param name="bag">The bag.</param>
    public static FlowKnowledge Of(Panel panel, Bag bag)
    {
        ArgumentNullException.ThrowIfNull(panel);
        ArgumentNullException.ThrowIfNull(bag);
        IEnumerable<Moment> moments = panel.Feeds.Select(static feed => feed.Clamp).Concat(panel.Vents.Select(static vent => vent.Clamp))
            .SelectMany(static clamp => clamp.Steps).Select(static step => step.When)
            .Concat(bag.Steps.Select(static step => step.When));
        double[] minutes = [.. moments.OfType<AtTime>().Select(static at => at.Time)];
        return new(bag.Leak is { Throughput: > 0 } || minutes.Length > 0, panel.Slope is not null || panel.Pots.Any(static pot => pot.Level != 0))
        {
            FirstMinute = minutes.Append(double.PositiveInfinity).Min(),
        };
    }
}

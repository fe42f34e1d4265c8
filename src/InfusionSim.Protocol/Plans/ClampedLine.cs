using Google.Protobuf.Collections;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>The clamp of a feed or a vent, as the plan writes it.</summary>
/// <param name="Name">Name of the line.</param>
/// <param name="Title">What a message calls it: "feed 'F1'".</param>
/// <param name="Path">Where it stands in the plan.</param>
/// <param name="Opens">When it opens; null for open from the start.</param>
/// <param name="Shuts">When it shuts; null for never.</param>
/// <param name="OpenFraction">How far open; null for wide open.</param>
/// <param name="Steps">Further turns.</param>
/// <param name="HasHose">Whether the line has a hose to clamp.</param>
internal sealed record ClampedLine(
    string Name, string Title, string Path, Moment? Opens, Moment? Shuts, double? OpenFraction, RepeatedField<ClampStep> Steps, bool HasHose)
{
    /// <summary>All lines of a plan: feeds first, then vents.</summary>
    public static IEnumerable<ClampedLine> Of(InfusionPlan plan) =>
    [
        .. plan.Feeds.Select(static (feed, k) => new ClampedLine(
            feed.Name, $"feed '{Json.ValueReader.Shorten(feed.Name)}'", $"feeds[{k}]", feed.Opens, feed.Shuts,
            feed.HasOpenFraction ? feed.OpenFraction : null, feed.ClampSteps, feed.Hose is not null)),
        .. plan.Vents.Select(static (vent, k) => new ClampedLine(
            vent.Name, $"vent '{Json.ValueReader.Shorten(vent.Name)}'", $"vents[{k}]", vent.Opens, vent.Shuts,
            vent.HasOpenFraction ? vent.OpenFraction : null, vent.ClampSteps, vent.Hose is not null)),
    ];

    /// <summary>Every turn of the clamp, in the order of the plan's keys.</summary>
    public IEnumerable<PlannedTurn> Turns()
    {
        if (Opens is not null) yield return new PlannedTurn($"{Path}.opens", Name, Opens, OpenFraction ?? 1, null);
        if (Shuts is not null) yield return new PlannedTurn($"{Path}.shuts", Name, Shuts, 0, null);
        for (int k = 0; k < Steps.Count; k++)
            if (Steps[k].When is Moment when) yield return new PlannedTurn($"{Path}.clampSteps[{k}]", Name, when, Steps[k].OpenFraction, null);
    }
}

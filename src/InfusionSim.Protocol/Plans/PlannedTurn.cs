using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>One turn of a clamp, or one step of the vacuum, as the plan writes it.</summary>
/// <param name="Path">Where it stands in the plan.</param>
/// <param name="Line">Name of the feed or vent; empty for the vacuum.</param>
/// <param name="When">When it is made.</param>
/// <param name="OpenFraction">How far open the clamp is from then on [-]; null for the vacuum.</param>
/// <param name="PressureMbarAbs">Absolute pressure under the bag from then on [mbar]; null for a clamp.</param>
internal sealed record PlannedTurn(string Path, string Line, Moment When, double? OpenFraction, double? PressureMbarAbs)
{
    // A minute goes to seconds and back on its way through the physics.
    private const double Rounding = 1e-9;

    /// <summary>All of a plan, feeds first, then vents, then the vacuum.</summary>
    public static IEnumerable<PlannedTurn> Of(InfusionPlan plan) =>
    [
        .. ClampedLine.Of(plan).SelectMany(static line => line.Turns()),
        .. (plan.Bag?.Steps ?? []).Select(static (step, k) => (step, k)).Where(static pair => pair.step.When is not null)
            .Select(static pair => new PlannedTurn($"bag.steps[{pair.k}]", "", pair.step.When, null, pair.step.PressureMbarAbs)),
    ];

    /// <summary>Whether a thing that is done in a forecast is this one.</summary>
    public bool IsDoneBy(ClampEvent done) => done.Line == Line && done.When is Moment when && IsAt(when);

    /// <summary>Whether another moment is the same.</summary>
    public bool IsAt(Moment other) => When.HasAtMin == other.HasAtMin && When.WhenReached == other.WhenReached
        && (!When.HasAtMin || Math.Abs(When.AtMin - other.AtMin) <= Rounding * Math.Max(1, Math.Abs(When.AtMin)));
}

using InfusionSim.Physics.Clamps;
using InfusionSim.Protocol.Units;
using Contract = InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Turns what a plan says of clamps and moments into what the physics takes, and back.</summary>
internal static class ClampMapping
{
    /// <summary>The clamp of a line.</summary>
    public static Clamp ToClamp(ClampedLine line)
    {
        PlannedTurn[] turns = [.. line.Turns()];
        double atStart = line.Opens is not null ? 0 : line.OpenFraction ?? 1;
        return turns.Length == 0 && atStart == 1
            ? Clamp.AlwaysOpen
            : new Clamp(atStart, [.. turns.Select(static turn => new ClampStep(ToMoment(turn.When), turn.OpenFraction!.Value))]);
    }

    /// <summary>The steps of the vacuum.</summary>
    public static IReadOnlyList<BagStep> ToSteps(Contract.Bag bag) =>
        bag.Steps.Count == 0 ? [] : [.. bag.Steps.Select(static step => new BagStep(ToMoment(step.When), UnitConversion.PascalFromMbar(step.PressureMbarAbs)))];

    /// <summary>A moment of the physics.</summary>
    public static Moment ToMoment(Contract.Moment when)
    {
        if (when.HasAtMin) return new AtTime(UnitConversion.SecondsFromMin(when.AtMin));
        return when.WhenReached.Length > 0 ? new WhenReached(when.WhenReached) : new WhenFull();
    }

    /// <summary>A moment of the contract.</summary>
    public static Contract.Moment ToContract(Moment when) => when switch
    {
        AtTime at => new Contract.Moment { AtMin = UnitConversion.Kept(at.Time / 60) },
        WhenReached reached => new Contract.Moment { WhenReached = reached.Name },
        WhenFull => new Contract.Moment { WhenFull = true },
        _ => throw new ArgumentOutOfRangeException(nameof(when), when, "No such moment."),
    };
}

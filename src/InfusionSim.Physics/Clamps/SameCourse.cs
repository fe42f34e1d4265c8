using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Clamps;

/// <summary>How far two fills of the same panel under the same rules go together: up to the first minute that comes at another drive clock.</summary>
/// <remarks>Gas that is trapped where a minute differs later, or into which air leaks, is followed anew from its beginning.</remarks>
internal static class SameCourse
{
    // Clocks that lie as near are one.
    private const double Tie = 1e-9;

    /// <summary>Drive clock up to which another fill goes along with one that has been followed [-]; +∞ when nothing differs to the end.</summary>
    /// <param name="before">The fill that has been followed.</param>
    /// <param name="conditions">The conditions of the other.</param>
    public static double Until(FillMap before, FillConditions conditions)
    {
        double end = before.Stretches[^1].End;
        double firstGas = before.Stretches.FirstOrDefault(static stretch => stretch.Gas is not null)?.Start.Clock ?? double.PositiveInfinity;
        Dictionary<Moment, double> come = [];
        List<AtTime> minutes = [.. (conditions.Rules?.Rules ?? []).Select(static rule => rule.When).OfType<AtTime>().Distinct()];
        foreach ((double clock, Moment when) in TurnsOf(before).TakeWhile(turn => turn.Clock <= end))
        {
            double due = Due();
            if (due < clock * (1 - Tie)) return SameUntil(due);
            if (when is AtTime minute && !come.ContainsKey(minute))
            {
                if (!(Math.Abs(ClockOf(minute) - clock) <= Tie * clock)) return SameUntil(clock);
                minutes.Remove(minute);
            }

            come.TryAdd(when, clock);
        }

        return SameUntil(Due());

        double SameUntil(double clock)
        {
            double same = conditions.Leak is null ? clock : Math.Min(clock, firstGas);
            return same >= end ? double.PositiveInfinity : Math.Min(same, firstGas);
        }

        double Due() => minutes.Select(ClockOf).DefaultIfEmpty(double.PositiveInfinity).Min();

        double ClockOf(AtTime minute) => conditions.Rules!.ClockAt(minute.Time, moment => come.TryGetValue(moment, out double clock) ? clock : double.PositiveInfinity);
    }

    /// <summary>What was done during a fill, and what is due after its end, in order: drive clock [-] and the moment that was waited for.</summary>
    /// <param name="fill">The fill.</param>
    public static IEnumerable<(double Clock, Moment When)> TurnsOf(FillMap fill) => fill.Turns.Select(static turn => (turn.Clock, turn.When))
        .Concat(fill.BagTurns.Select(static turn => (turn.Clock, turn.When)))
        .OrderBy(static turn => turn.Clock);
}

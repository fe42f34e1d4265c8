using InfusionSim.Protocol.V1;

namespace InfusionSim.Plots.Charts;

/// <summary>Wet share of the pores against time.</summary>
/// <param name="TimesS">Times in order, the first 0 [s].</param>
/// <param name="Shares">Share of the pore volume that is full at each time [-].</param>
internal sealed record ProgressCurve(double[] TimesS, double[] Shares)
{
    /// <summary>Reads the curve from moments.</summary>
    internal static ProgressCurve From(IReadOnlyList<FillMoment> moments) => new(
        [0, .. moments.Select(moment => moment.TimeS)],
        [0, .. moments.Select(moment => moment.FilledFraction)]);

    /// <summary>The same curve with every time multiplied.</summary>
    /// <param name="factor">What the times are multiplied by [-].</param>
    internal ProgressCurve Slower(double factor) => this with { TimesS = [.. TimesS.Select(time => time * factor)] };

    /// <summary>The same curve up to a time, holding its value from then on.</summary>
    /// <param name="timeS">When it stops rising [s].</param>
    internal ProgressCurve Until(double timeS)
    {
        var count = TimesS.Count(time => time < timeS);
        return count == TimesS.Length ? this : new([.. TimesS[..count], timeS], [.. Shares[..count], At(timeS)]);
    }

    /// <summary>Share at a time, along straight lines on the square root of the time, which a straight fill follows exactly.</summary>
    /// <param name="timeS">Time [s].</param>
    internal double At(double timeS)
    {
        var after = Array.FindIndex(TimesS, time => time >= timeS);
        if (after < 0)
        {
            return Shares[^1];
        }

        if (after == 0)
        {
            return Shares[0];
        }

        var (from, to) = (Math.Sqrt(TimesS[after - 1]), Math.Sqrt(TimesS[after]));
        return to <= from ? Shares[after] : Shares[after - 1] + (Shares[after] - Shares[after - 1]) * (Math.Sqrt(timeS) - from) / (to - from);
    }
}

using InfusionSim.Protocol.Words;

namespace InfusionSim.Plots.Words;

/// <summary>Round times as isochrones carry them: exact, in the wording of the answer wherever that is exact too.</summary>
internal static class TimeText
{
    /// <summary>One time: 0.5 s, 45 s, 75 s, 2.5 min, 3 min 45 s, 45 min, 3 h 20 min.</summary>
    /// <param name="seconds">Time [s].</param>
    internal static string Of(double seconds)
    {
        var tenths = Math.Round(seconds, 1);
        var isWhole = Math.Abs(tenths - Math.Round(tenths)) < 1e-9;
        if (!isWhole)
        {
            return $"{tenths:0.0} s";
        }

        var whole = (long)Math.Round(tenths);
        if (whole < 60 || whole % 60 == 0 || (whole < 600 && whole % 6 == 0))
        {
            return Amounts.Time(whole);
        }

        return whole < 120 ? $"{whole} s" : $"{whole / 60} min {whole % 60} s";
    }
}

namespace InfusionSim.Plots.Words;

/// <summary>Times in words, as a laminator reads them off a clock.</summary>
internal static class TimeText
{
    /// <summary>One time in words: 90 s, 7 min 30 s, 45 min, 3 h 20 min.</summary>
    /// <param name="seconds">Time [s].</param>
    internal static string Of(double seconds)
    {
        if (seconds < 9.95)
        {
            return $"{Math.Round(seconds, 1):0.#} s";
        }

        var whole = (long)Math.Round(seconds);
        if (whole < 120 && whole % 60 != 0)
        {
            return $"{whole} s";
        }

        if (whole < 600)
        {
            return whole % 60 == 0 ? $"{whole / 60} min" : $"{whole / 60} min {whole % 60} s";
        }

        var minutes = (long)Math.Round(seconds / 60);
        return minutes < 180 ? $"{minutes} min" : minutes % 60 == 0 ? $"{minutes / 60} h" : $"{minutes / 60} h {minutes % 60} min";
    }

    /// <summary>Two times in words: 20 to 45 min.</summary>
    /// <param name="from">Earlier time [s].</param>
    /// <param name="to">Later time [s].</param>
    internal static string Range(double from, double to)
    {
        var (first, last) = (Of(from), Of(to));
        var unit = last[(last.LastIndexOf(' ') + 1)..];
        return first.EndsWith(" " + unit, StringComparison.Ordinal) && first.Count(c => c == ' ') == 1 && last.Count(c => c == ' ') == 1
            ? $"{first[..^(unit.Length + 1)]} to {last}"
            : $"{first} to {last}";
    }
}

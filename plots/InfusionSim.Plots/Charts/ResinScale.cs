namespace InfusionSim.Plots.Charts;

/// <summary>The time axis that all charts of a comparison of resins share.</summary>
/// <param name="EndS">Where it ends [s].</param>
/// <param name="UnitS">Seconds in its unit [s].</param>
/// <param name="Unit">Its unit.</param>
internal sealed record ResinScale(double EndS, double UnitS, string Unit)
{
    // Beyond this many times the slowest end a gel time would squeeze the curves into a corner; it is told in words there.
    private const double MostOfEnd = 2.2;

    private const double Room = 1.08;

    /// <summary>The axis that shows all ends, and the gel times that lie near enough.</summary>
    internal static ResinScale Of(IReadOnlyList<ResinLine> lines)
    {
        var slowest = Math.Max(1, lines.Max(line => line.EndS));
        var near = lines.Select(line => line.GelS).Where(gel => gel <= slowest * MostOfEnd).Append(slowest).Max();
        var end = Math.Max(near * Room, slowest * (near > slowest ? Room : 1.3));
        var (seconds, name) = end < 240 ? (1.0, "s") : end < 4 * 3600 ? (60.0, "min") : (3600.0, "h");
        return new ResinScale(end, seconds, name);
    }

    /// <summary>Whether a time lies on the axis.</summary>
    /// <param name="timeS">Time [s].</param>
    internal bool Shows(double timeS) => timeS <= EndS;

    /// <summary>What the axis counts.</summary>
    internal string Caption => $"time after the first feed opens [{Unit}]";
}

namespace InfusionSim.Physics.Air;

/// <summary>Air that goes on leaking into pockets after they are cut off from the pump.</summary>
/// <remarks>Nobody knows where a bag leaks: the leak is taken to be spread evenly over the panel, so a pocket gets the share that its area had when it was sealed (our own choice).</remarks>
/// <param name="Throughput">What leaks into the whole bag [Pa·m³/s].</param>
/// <param name="TimeAt">Time at a drive clock [- → s]; that of gel for any clock beyond it.</param>
/// <param name="Until">Drive clock at gel [-]: what leaks in later no longer moves anything.</param>
public sealed record PocketLeak(double Throughput, Func<double, double> TimeAt, double Until)
{
    /// <summary>What has leaked into a pocket between two drive clocks [Pa·m³].</summary>
    /// <param name="pocket">The pocket.</param>
    /// <param name="panelArea">Area of the cloth [m²].</param>
    /// <param name="from">The earlier drive clock [-].</param>
    /// <param name="to">The later one [-].</param>
    public double Into(GasPocket pocket, double panelArea, double from, double to) =>
        Throughput * Math.Min(1, Checked(pocket).SealedArea / panelArea) * (TimeAt(Math.Min(to, Until)) - TimeAt(Math.Min(from, Until)));

    private static GasPocket Checked(GasPocket pocket)
    {
        ArgumentNullException.ThrowIfNull(pocket);
        return pocket;
    }
}

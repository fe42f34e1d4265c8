namespace InfusionSim.Physics.Bleeding;

/// <summary>What one vent passes once the panel is full, as long as it stays open.</summary>
/// <remarks>
/// From then on the flow is steady on the drive clock, so that the volume is the flow per clock times the clock that has passed: a resin that
/// thickens passes less and less.
/// The flow is that with all vents open; clamping one sends more through the others.
/// </remarks>
/// <param name="Rate">Volume per second right after the end [m³/s].</param>
/// <param name="BeforeEnd">Volume that has left through it up to the end [m³].</param>
/// <param name="UntilClamped">Volume from the end until the advised moment to clamp, or until it shuts by itself [m³].</param>
/// <param name="UntilGel">Volume from the end until gel, or until it shuts by itself [m³].</param>
/// <param name="HoseVolume">What its line and hose hold [m³].</param>
/// <param name="ShutTime">When it is clamped according to the plan, from the opening of the first feed [s]; null when it stays open.</param>
/// <param name="Points">Volume over time from the end until gel, or until it shuts by itself.</param>
public sealed record VentBleed(
    double Rate, double BeforeEnd, double UntilClamped, double UntilGel, double HoseVolume, double? ShutTime, IReadOnlyList<BleedPoint> Points)
{
    /// <summary>Least that a catch pot should hold over what is planned to come [-] (common practice).</summary>
    public const double LeastReserve = 1.5;

    /// <summary>Ample reserve of a catch pot over what is planned to come [-] (common practice).</summary>
    public const double AmpleReserve = 2;

    /// <summary>What is planned to come into the catch pot: resin out up to the advised moment to clamp, and what line and hose hold [m³].</summary>
    public double Planned => BeforeEnd + UntilClamped + HoseVolume;
}

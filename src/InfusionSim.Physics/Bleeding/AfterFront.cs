using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Physics.Bleeding;

/// <summary>
/// What happens after the front has arrived everywhere and a vent stays open: resin leaves, and takes the bubbles with it that the front has made.
/// </summary>
/// <remarks>
/// The resin that filled last, a tenth of the pore volume of the part, was at the front longest and carries its bubbles. The clamp is advised when
/// nine tenths of it have left at the
/// pace of the resin (both shares are our own choice). Bubbles stick to fibres and rise, so some take longer: it is the earliest moment, not a
/// promise. Where air is trapped
/// no such moment is told: the air is cut off from every vent, so that no waiting draws it out, and round it the resin stands still. An open vent
/// lowers the pressure of the resin
/// and lets the air grow; what it costs is told all the same.
/// </remarks>
public sealed record AfterFront
{
    /// <summary>Share of the part's pore volume that counts as filled last [-].</summary>
    public const double LastShare = 0.1;

    /// <summary>Share of it that must have left [-].</summary>
    public const double LeftShare = 0.9;

    /// <summary>When the last place is full [s].</summary>
    public required double EndTime { get; init; }

    /// <summary>When the resin gels [s]: no vent passes anything from then on, and a clamp must be shut before.</summary>
    public required double GelTime { get; init; }

    /// <summary>Whether air is trapped, which no bleeding draws out; nothing is told then of the resin that filled last.</summary>
    public bool AirStays { get; init; }

    /// <summary>When nine tenths of the resin that filled last have left [s]; null when that does not happen before gel or the vents shut.</summary>
    public double? LastResinOut { get; init; }

    /// <summary>The same at the fast end of the band [s]; null likewise.</summary>
    public double? LastResinOutFrom { get; init; }

    /// <summary>The same at the slow end of the band [s]; null likewise.</summary>
    public double? LastResinOutTo { get; init; }

    /// <summary>
    /// When to clamp the vents: when nine tenths of the resin that filled last and finds a vent before gel have left; never later than gel; where air
    /// stays, the end of the fill [s].
    /// </summary>
    public required double ClampTime { get; init; }

    /// <summary>Share of the resin that filled last that has left when the vents are clamped [-].</summary>
    public double LeftWhenClamped { get; init; }

    /// <summary>Share of the resin that filled last that stands still or finds no vent before gel [-].</summary>
    public double Stays { get; init; }

    /// <summary>Middle of what stays [m]; null when all of it leaves.</summary>
    public Point2? StaysAt { get; init; }

    /// <summary>What each vent passes, in the panel's order; null for one that holds resin.</summary>
    public required IReadOnlyList<VentBleed?> Vents { get; init; }
}

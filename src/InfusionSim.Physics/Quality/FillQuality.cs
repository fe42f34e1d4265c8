using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Physics.Quality;

/// <summary>Numbers that tell how well a panel is wetted, place by place: they are shown and judge nothing.</summary>
/// <remarks>Where there are layers they are those of the lowest sub-layer of laminate, on the mould, which is reached last.</remarks>
public sealed record FillQuality
{
    /// <summary>
    /// Share of the cloth that the slow and the fast end of a range leave out, each [-]: beside a feed any front is as fast as the squares are small.
    /// </summary>
    public const double LeftOut = 0.05;

    /// <summary>
    /// Speed of the front when it comes to each cell [m/s]; NaN where it does not come before the end, or sets out from. [rows × columns], x fastest.
    /// </summary>
    public required double[] FrontSpeeds { get; init; }

    /// <summary>Speed of the front in all but the slowest twentieth and the fastest twentieth of the cloth [m/s]; null when it comes nowhere.</summary>
    public required QualityRange? FrontSpeed { get; init; }

    /// <summary>
    /// Capillary number of the front when it comes to each cell [-]; NaN where it has no speed; null when nothing is known of the wetting. [rows ×
    /// columns], x fastest.
    /// </summary>
    public double[]? CapillaryNumbers { get; init; }

    /// <summary>The same in all but the lowest and the highest twentieth of the cloth [-]; null when nothing is known of the wetting.</summary>
    public QualityRange? CapillaryNumber { get; init; }

    /// <summary>Share of the cloth whose number lies below the published range [-]; null when nothing is known of the wetting.</summary>
    public double? BelowPublished { get; init; }

    /// <summary>Share of the cloth whose number lies above the published range [-]; null when nothing is known of the wetting.</summary>
    public double? AbovePublished { get; init; }

    /// <summary>
    /// What is left of the drive clock up to gel when the front comes to each cell, over that clock [-]; NaN where it does not come before the end.
    /// [rows × columns], x fastest.
    /// </summary>
    public required double[] GelMargins { get; init; }

    /// <summary>The smallest of these [-]; null when the front comes nowhere.</summary>
    public required double? SmallestGelMargin { get; init; }

    /// <summary>Where that is [m]; null when the front comes nowhere.</summary>
    public required Point2? SmallestGelMarginAt { get; init; }
}

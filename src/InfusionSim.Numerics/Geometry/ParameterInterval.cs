namespace InfusionSim.Numerics.Geometry;

/// <summary>A stretch of a straight segment.</summary>
/// <param name="From">Where it begins, as a share of the segment from its start [-], 0 to 1.</param>
/// <param name="To">Where it ends [-], from <paramref name="From"/> to 1.</param>
public readonly record struct ParameterInterval(double From, double To)
{
    /// <summary>Share of the segment [-].</summary>
    public double Share => To - From;
}

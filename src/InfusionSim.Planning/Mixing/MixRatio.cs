namespace InfusionSim.Planning.Mixing;

/// <summary>How much hardener belongs to a resin, by mass.</summary>
/// <param name="HardenerPerResin">Mass of hardener over mass of resin [-], above 0.</param>
public sealed record MixRatio(double HardenerPerResin)
{
    /// <summary>The ratio of a data sheet that speaks of mass.</summary>
    /// <param name="parts">Parts of hardener to 100 parts of resin, both by mass [-], above 0.</param>
    public static MixRatio OfMass(double parts)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(parts);
        return new(parts / 100);
    }

    /// <summary>The ratio of a data sheet that speaks of volume.</summary>
    /// <param name="parts">Parts of hardener to 100 parts of resin, both by volume [-], above 0.</param>
    /// <param name="resinDensity">Density of the resin before mixing [kg/m³], above 0.</param>
    /// <param name="hardenerDensity">Density of the hardener [kg/m³], above 0.</param>
    public static MixRatio OfVolume(double parts, double resinDensity, double hardenerDensity)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(parts);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(resinDensity);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(hardenerDensity);
        return new(parts / 100 * hardenerDensity / resinDensity);
    }

    /// <summary>What to weigh out for a mass of mixed resin.</summary>
    /// <param name="mixed">Mass of resin and hardener together [kg], at least 0.</param>
    public WeighedOut Weigh(double mixed)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(mixed);
        double resin = mixed / (1 + HardenerPerResin);
        return new(resin, mixed - resin);
    }
}

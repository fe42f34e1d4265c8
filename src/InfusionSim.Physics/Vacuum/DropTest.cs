namespace InfusionSim.Physics.Vacuum;

/// <summary>The drop test: the pump is shut off, and the pressure under the bag is watched as it rises.</summary>
/// <remarks>
/// Q = V Δp / Δt at even temperature. The volume is all that is closed in: the pores of the dry cloth, bag folds, hoses and the catch pot. In a
/// small volume a small leak looks large, so what is told is Q and not the rise. Cloth and bag that give off vapour raise the pressure as
/// a leak does; let the gauge settle before the test. Derived from p V = n R T.
/// </remarks>
/// <param name="Rise">How far the pressure rose [Pa], at least 0.</param>
/// <param name="Duration">In what time [s], above 0.</param>
/// <param name="Volume">Volume that was closed in [m³], above 0.</param>
public sealed record DropTest(double Rise, double Duration, double Volume)
{
    /// <summary>The leak that explains the rise.</summary>
    public GasLeak Leak
    {
        get
        {
            ArgumentOutOfRangeException.ThrowIfNegative(Rise);
            ArgumentOutOfRangeException.ThrowIfNegativeOrZero(Duration);
            ArgumentOutOfRangeException.ThrowIfNegativeOrZero(Volume);
            return new GasLeak(Volume * Rise / Duration);
        }
    }

    /// <summary>How far the pressure in a closed volume rises [Pa] with a given leak.</summary>
    /// <param name="leak">The leak.</param>
    /// <param name="duration">Time [s], at least 0.</param>
    /// <param name="volume">Volume that is closed in [m³], above 0.</param>
    public static double RiseOf(GasLeak leak, double duration, double volume)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(duration);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(volume);
        return leak.Throughput * duration / volume;
    }
}

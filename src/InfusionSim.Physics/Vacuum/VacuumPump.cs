namespace InfusionSim.Physics.Vacuum;

/// <summary>A vacuum pump with the speed that is left of it at the bag.</summary>
/// <remarks>
/// Net throughput at pressure p is S (p − p_u), with a speed S that stays the same over the range. Textbook vacuum practice (from memory). A long
/// thin hose between pump and bag takes much of S, and cloth that gives off vapour slows the last part: real bags take longer.
/// </remarks>
/// <param name="Speed">Volume it draws each second [m³/s], above 0.</param>
/// <param name="Lowest">Pressure it comes down to with its suction side closed [Pa absolute], at least 0.</param>
public sealed record VacuumPump(double Speed, double Lowest)
{
    /// <summary>Pressure that it holds against a leak [Pa absolute]: p_u + Q/S.</summary>
    /// <param name="leak">The leak.</param>
    public double HeldAgainst(GasLeak leak)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(Speed);
        return Lowest + leak.Throughput / Speed;
    }

    /// <summary>Time to draw a volume down [s]: (V/S) ln((p₀ − p_h)/(p − p_h)), p_h the pressure that is held in the end.</summary>
    /// <remarks>+∞ when it does not come down so far.</remarks>
    /// <param name="volume">Volume of the bag with hoses and catch pot [m³], above 0.</param>
    /// <param name="from">Absolute pressure at the start [Pa].</param>
    /// <param name="to">Absolute pressure wanted [Pa].</param>
    /// <param name="leak">The leak meanwhile, taken as steady; none when left out.</param>
    public double TimeToDraw(double volume, double from, double to, GasLeak leak = default)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(volume);
        double held = HeldAgainst(leak);
        if (to >= from) return 0;
        return to <= held ? double.PositiveInfinity : volume / Speed * Math.Log((from - held) / (to - held));
    }
}

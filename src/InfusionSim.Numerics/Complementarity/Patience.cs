using InfusionSim.Numerics.Krylov;

namespace InfusionSim.Numerics.Complementarity;

/// <summary>Decides after each correction whether to go on.</summary>
internal sealed class Patience
{
    // Each correction should gain far more than a half; three on end that do not are the end of what rounding allows.
    private const double Gain = 0.5;
    private const int IdleLimit = 3;

    // Fewer digits at once than double precision holds, so that what was computed on the way is checked against the truth.
    private const double BestReduction = 1e-7;

    /// <summary>Share of the tolerance to aim at: a little below it saves one more pass.</summary>
    public const double Aim = 0.3;

    private readonly double _tolerance;
    private readonly int _limit;
    private double _last = double.PositiveInfinity;
    private int _idle;

    /// <summary>Begins with no correction made.</summary>
    /// <param name="tolerance">Imbalance to reach.</param>
    /// <param name="limit">Most corrections.</param>
    public Patience(double tolerance, int limit)
    {
        _tolerance = tolerance;
        _limit = limit;
    }

    /// <summary>Corrections made so far [-].</summary>
    public int Corrections { get; private set; } = -1;

    /// <summary>Judges an imbalance; counts one correction.</summary>
    /// <param name="imbalance">The imbalance now.</param>
    /// <param name="stands">Whether the set of wet nodes stood still, so that the imbalance is comparable with those before.</param>
    /// <returns>Why to stop; null to go on.</returns>
    public StopReason? Judge(double imbalance, bool stands)
    {
        Corrections++;
        if (stands)
        {
            if (imbalance <= _tolerance) return StopReason.Converged;
            _idle = imbalance >= Gain * _last ? _idle + 1 : 0;
            if (_idle >= IdleLimit) return StopReason.Stagnated;
            _last = imbalance;
        }

        return Corrections >= _limit ? StopReason.IterationLimit : null;
    }

    /// <summary>How far the next correction should reduce the imbalance [-].</summary>
    /// <param name="imbalance">The imbalance now.</param>
    public double Reduction(double imbalance) => Math.Max(Aim * _tolerance / imbalance, BestReduction);
}

namespace InfusionSim.Numerics.Krylov;

/// <summary>Why an iteration stopped.</summary>
public enum StopReason
{
    /// <summary>The tolerance is met.</summary>
    Converged,

    /// <summary>Rounding allows no further progress; the imbalance reached stands in the report.</summary>
    Stagnated,

    /// <summary>The limit of iterations was reached first.</summary>
    IterationLimit,
}

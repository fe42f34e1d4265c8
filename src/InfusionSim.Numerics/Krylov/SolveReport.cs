namespace InfusionSim.Numerics.Krylov;

/// <summary>How a solution went.</summary>
/// <param name="Reason">Why it stopped.</param>
/// <param name="Corrections">Outer corrections: recomputed residuals, and for an obstacle problem changes of the wet set [-].</param>
/// <param name="Cycles">Multigrid cycles in all [-].</param>
/// <param name="Imbalance">Sum of what is not balanced over the cells that take part, relative to the sum of the right-hand side [-].</param>
public readonly record struct SolveReport(StopReason Reason, int Corrections, int Cycles, double Imbalance);

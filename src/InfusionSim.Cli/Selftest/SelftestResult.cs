namespace InfusionSim.Cli.Selftest;

/// <summary>What came of one check on its grids.</summary>
/// <param name="Check">The check.</param>
/// <param name="Errors">Relative error on each grid, coarse to fine [-]; NaN where the forecast had no such number.</param>
public sealed record SelftestResult(ClosedForm Check, IReadOnlyList<double> Errors)
{
    /// <summary>Squares across on each grid, coarse to fine [-].</summary>
    public static readonly IReadOnlyList<int> Across = [25, 50, 100, 200];

    /// <summary>Least observed order that passes [-].</summary>
    public const double LeastOrder = 0.9;

    /// <summary>Relative error below which it is that of the solver [-].</summary>
    public const double Exact = 1e-6;

    /// <summary>Whether every grid gives the formula's number to the solver's tolerance.</summary>
    public bool IsExact => Errors.All(error => Math.Abs(error) <= Exact);

    /// <summary>Whether no grid errs by more than what the squares have no say in.</summary>
    public bool IsSettled => Errors.All(error => Math.Abs(error) <= Check.Floor);

    /// <summary>Observed order: how often the error halves when the squares do, from the coarsest grid to the finest [-].</summary>
    public double Order => Math.Log2(Math.Abs(Errors[0]) / Math.Max(Math.Abs(Errors[^1]), Exact)) / (Errors.Count - 1);

    /// <summary>Relative error at 100 squares across [-].</summary>
    public double JudgedError => Errors[Across.ToList().IndexOf(100)];

    /// <summary>Whether the error is small enough and shrinks as it should.</summary>
    public bool Passes => Errors.All(double.IsFinite) && Math.Abs(JudgedError) <= Check.MostError && (IsSettled || Order >= LeastOrder);
}

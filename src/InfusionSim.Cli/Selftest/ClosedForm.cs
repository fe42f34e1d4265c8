using InfusionSim.Protocol.V1;

namespace InfusionSim.Cli.Selftest;

/// <summary>A fill whose time is known from a formula.</summary>
/// <param name="Name">What is filled, in a few words.</param>
/// <param name="Source">Where the formula comes from.</param>
/// <param name="ExpectedTimeS">The time by the formula [s].</param>
/// <param name="AcrossMm">Length that the number of squares across is counted on [mm].</param>
/// <param name="MostError">Largest relative error at 100 squares across [-].</param>
/// <param name="Draw">Makes the plan; the size of its squares is set afterwards.</param>
/// <param name="ReadTimeS">Takes the time out of the forecast [s]; null when the forecast has none.</param>
public sealed record ClosedForm(
    string Name, string Source, double ExpectedTimeS, double AcrossMm, double MostError, Func<InfusionPlan> Draw, Func<FillForecast, double?> ReadTimeS)
{
    /// <summary>Relative error below which the squares have no say and an order says nothing [-]; by default what the solver leaves.</summary>
    public double Floor { get; init; } = SelftestResult.Exact;
}

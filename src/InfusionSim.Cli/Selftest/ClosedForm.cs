using InfusionSim.Protocol.V1;

namespace InfusionSim.Cli.Selftest;

/// <summary>A panel of which one number is known from a formula.</summary>
/// <param name="Name">What is filled and, where it is no time, what is read, in a few words.</param>
/// <param name="Source">Where the formula comes from.</param>
/// <param name="Expected">The number by the formula, in <see cref="Unit"/>.</param>
/// <param name="AcrossMm">Length that the number of squares across is counted on [mm].</param>
/// <param name="MostError">Largest relative error at 100 squares across [-].</param>
/// <param name="Draw">Makes the plan; the size of its squares is set afterwards.</param>
/// <param name="Read">Takes the number out of the forecast; null when the forecast has none.</param>
public sealed record ClosedForm(
    string Name, string Source, double Expected, double AcrossMm, double MostError, Func<InfusionPlan> Draw, Func<FillForecast, double?> Read)
{
    /// <summary>Unit of the number; a time in seconds if nothing else is said.</summary>
    public string Unit { get; init; } = "s";

    /// <summary>Relative error below which the squares have no say and an order says nothing [-]; by default what the solver leaves.</summary>
    public double Floor { get; init; } = SelftestResult.Exact;

    /// <summary>The plan on a grid.</summary>
    /// <param name="across">Squares across [-].</param>
    public InfusionPlan DrawOn(int across)
    {
        InfusionPlan plan = Draw();
        plan.Resolution ??= new Resolution();
        plan.Resolution.CellMm = AcrossMm / across;
        return plan;
    }
}

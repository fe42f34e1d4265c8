using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Bleeding;

/// <summary>What flows out of each vent after the end of a fill.</summary>
/// <remarks>
/// In a full panel that is the flow of the steady pressure. Trapped gas that has been followed conducts nothing: with it the pressure of the last
/// state counts, in which
/// the gas is at rest and the resin flows round it. On a slope trapped gas is not followed, and the flow is that without it: somewhat too much. Derived.
/// </remarks>
internal static class VentFlow
{
    /// <summary>Volume per unit of drive clock out of each vent, in the panel's order [m³]; 0 for one that holds resin.</summary>
    /// <param name="map">Where the resin goes.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static double[] Of(FillMap map, CancellationToken cancellation)
    {
        FillProblem problem = map.ProblemAtEnd;
        double[] pressure = map.Pockets.Count > 0 ? AroundGas(map, cancellation) : map.Total.SteadyPressure;
        return [.. Enumerable.Range(0, problem.Vents.Count).Select(vent => problem.VentPassesResin[vent] ? Math.Max(0, ResinAccount.OutOf(problem, vent, pressure, Lift)) : 0)];

        double Lift(int from, int to) => problem.Heads is double[] heads ? heads[to] - heads[from] : 0;
    }

    private static double[] AroundGas(FillMap map, CancellationToken cancellation)
    {
        FillStretch last = map.Stretches[^1];
        FillState state = map.StateIn(last, last.End, withPressure: true, FillMarcher.ForecastTolerance, cancellation);
        HashSet<int> gas = [.. state.GasNodes.SelectMany(static nodes => nodes)];
        return [.. state.Pressure!.Select((pressure, node) => state.Saturation[node] < 1 && !gas.Contains(node) ? 0 : pressure)];
    }
}

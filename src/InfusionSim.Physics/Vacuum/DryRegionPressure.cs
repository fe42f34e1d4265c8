using InfusionSim.Numerics.Complementarity;
using InfusionSim.Numerics.Krylov;
using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Vacuum;

/// <summary>How far a leak lifts the pressure in dry cloth above that of the vents: one number for the whole dry region, and no more is claimed.</summary>
/// <remarks>
/// <para>
/// Gas seeps through the cloth by Darcy's law as resin does, but it thins as it expands: p ∇p takes the place of ∇p, so p² − p_vent² = 2 μ_air Q ψ,
/// where ψ solves A ψ = s on the conductances of the dry cloth with the vents at 0. Where the leak sits is not known; it is spread over the pores,
/// and the mean of ψ over them is taken. That is also what the average place sees of a leak that may sit anywhere with equal chance. With it
/// p_dry = √(p_vent² + 2 μ_air Q ψ̄) = p_vent + Q R_gas, R_gas = 2 μ_air ψ̄ / (p_dry + p_vent). Derived.
/// </para>
/// <para>
/// Limits: steady gas, even temperature, one leak of constant size. At a few mbar the way between two collisions is longer than a pore is wide, and
/// the gas slips along the fibres: then less pressure is needed than said here, so the number is a cautious one. It is that of the region given; as
/// the resin comes nearer to the vents the way of the gas becomes shorter. Places from which gas finds no way to a vent are left out.
/// </para>
/// </remarks>
/// <param name="Resistance">ψ̄: how hard it is for gas to get from the cloth to the vents, whatever its viscosity [1/m³], at least 0.</param>
public sealed record DryRegionPressure(double Resistance)
{
    private const double Tolerance = 1e-9, LargestImbalance = 1e-6;

    /// <summary>Pressure in the dry region [Pa absolute].</summary>
    /// <param name="vent">Pressure at the vents [Pa absolute].</param>
    /// <param name="leak">The leak into the region.</param>
    /// <param name="temperature">Temperature of the gas [K].</param>
    public double PressureWith(double vent, GasLeak leak, double temperature) =>
        Math.Sqrt(vent * vent + 2 * AirViscosity.At(temperature) * leak.Throughput * Resistance);

    /// <summary>The whole cloth of a panel, dry as before the first feed opens; null when no air can leave it.</summary>
    /// <param name="problem">The panel as numbers.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static DryRegionPressure? OfDryPanel(FillProblem problem, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(problem);
        return Of(problem, [.. problem.PoreVolume.Select(static volume => volume > 0)], cancellation);
    }

    /// <summary>A dry region; null when gas finds no way from it to a vent.</summary>
    /// <param name="problem">The panel as numbers.</param>
    /// <param name="dry">Whether each node belongs to the region. [nodes].</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="FlowNotSolvedException">When the solver does not reach its tolerance.</exception>
    public static DryRegionPressure? Of(FillProblem problem, bool[] dry, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(dry);
        LatticeOperator ways = DryWays.Of(problem, dry);
        bool[] open = DryWays.ToVents(ways);
        double[] source = [.. Enumerable.Range(0, ways.NodeCount).Select(node => open[node] && node < ways.CellCount ? problem.PoreVolume[node] : 0)];
        double pores = source.Sum();
        if (!(pores > 0)) return null;

        double[] potential = new double[source.Length];
        SolveReport report = new SteadySolver(ways, open).Solve(source, potential, Tolerance, cancellation);
        if (report.Reason == StopReason.IterationLimit || report.Imbalance > LargestImbalance)
            throw new FlowNotSolvedException($"The pressure of the gas in the dry cloth was not found: {report}.");
        double weighed = 0;
        for (int node = 0; node < source.Length; node++) weighed += source[node] * potential[node];
        return new DryRegionPressure(weighed / (pores * pores));
    }
}

using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Air;

/// <summary>What is left of each pocket when the resin around it has come to its final pressure.</summary>
/// <remarks>
/// The gas is sealed in at the pressure under the bag and pressed together at even temperature: V = V₀ p_bag / p_resin
/// (Boyle's law), with the resin pressure that the place has when all else is wet. It is taken to give way without
/// pushing back while the panel fills, and what stays dry are the places the front would pass last.
/// </remarks>
public static class DrySpotFinder
{
    private const double Rounding = 1e-9;

    /// <summary>Finds what stays dry, largest first.</summary>
    /// <param name="map">The fill.</param>
    /// <param name="bag">The pressures.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static IReadOnlyList<DrySpot> Find(FillMap map, Bag bag, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(map);
        ArgumentNullException.ThrowIfNull(bag);
        List<DrySpot> spots = [];
        foreach (Pocket pocket in PocketFinder.Find(map)) spots.Add(Compress(map, bag, pocket, cancellation));
        return [.. spots.OrderByDescending(static spot => spot.Area)];
    }

    private static DrySpot Compress(FillMap map, Bag bag, Pocket pocket, CancellationToken cancellation)
    {
        FillProblem problem = map.Problem;
        double[] pores = problem.PoreVolume;
        FillState atSealing = map.StateAt(pocket.SealedClock, cancellation: cancellation);
        double gas = 0;
        DryColumns atFirst = new(problem), atLast = new(problem);
        foreach (int cell in pocket.Cells.Concat(PocketRim.Of(problem, pocket, atSealing.Saturation)))
        {
            double dry = 1 - atSealing.Saturation[cell];
            gas += pores[cell] * dry;
            atFirst.Add(cell, dry);
        }

        int last = pocket.Cells.Last(node => problem.CellOf(node) >= 0);
        double resinPressure = bag.Pressure + (bag.Ambient - bag.Pressure) * map.Total.SteadyPressure[last];
        gas *= bag.Pressure / resinPressure;

        // What rounding leaves of the gas must not open one more cell.
        double least = gas * Rounding;
        double room = gas, end = map.FillClock;
        List<int> nodes = [];
        for (int k = pocket.Cells.Count - 1; k >= 0 && room > least; k--)
        {
            int cell = pocket.Cells[k];
            double share = Math.Min(1, room / pores[cell]);
            room -= share * pores[cell];
            atLast.Add(cell, share);
            nodes.Add(cell);
            if (double.IsFinite(map.Arrival[cell])) end = map.Arrival[cell];
        }

        Point2 middle = atLast.Area > 0 ? new Point2(atLast.MomentX / atLast.Area, atLast.MomentY / atLast.Area) : problem.Cells.CentroidOf(problem.CellOf(last));
        return new DrySpot(middle, atLast.Cells, atLast.Area, pocket.SealedClock, atFirst.Area, gas, end) { Nodes = nodes };
    }
}

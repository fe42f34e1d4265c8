using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Air;

/// <summary>What is left of each pocket when the resin around it has come to its final pressure.</summary>
/// <remarks>
/// The gas is sealed in at the pressure under the bag and pressed together at even temperature: V = V₀ p_bag / p_resin
/// (Boyle's law), with the resin pressure that the place has when all else is wet. On a slope it is taken to give way without
/// pushing back while the panel fills, and what stays dry are the places the front would pass last; elsewhere it has been followed.
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
        if (map.FollowsGas) return [.. map.Pockets.Select(pocket => Kept(map, pocket, cancellation)).OrderByDescending(static spot => spot.Area)];
        List<DrySpot> spots = [];
        foreach (Pocket pocket in PocketFinder.Find(map)) spots.Add(Compress(map, bag, pocket, cancellation));
        return [.. spots.OrderByDescending(static spot => spot.Area)];
    }

    // Gas that was followed to the end keeps open what the state at the end says.
    private static DrySpot Kept(FillMap map, GasPocket pocket, CancellationToken cancellation)
    {
        FillProblem problem = map.Problem;
        FillState last = map.StateAt(map.Stretches[^1].End, cancellation: cancellation);
        DryColumns dry = new(problem);
        double gas = 0;
        foreach (int node in pocket.Nodes)
        {
            gas += problem.PoreVolume[node] * (1 - last.Saturation[node]);
            dry.Add(node, 1 - last.Saturation[node]);
        }

        int any = pocket.Nodes.First(node => problem.CellOf(node) >= 0);
        Point2 middle = dry.Area > 0 ? new Point2(dry.MomentX / dry.Area, dry.MomentY / dry.Area) : problem.Cells.CentroidOf(problem.CellOf(any));

        // A picture shows the squares that are dry for the better part; a small spot shows at least where it is.
        int[] shown = [.. pocket.Nodes.Where(node => last.Saturation[node] < 0.5 && problem.StaysInPart(node)).Select(problem.CellOf).Where(static cell => cell >= 0).Distinct()];
        return new DrySpot(middle, shown.Length > 0 ? shown : dry.Cells, dry.Area, pocket.SealedClock, pocket.SealedArea, gas, map.FillClock) { Nodes = pocket.Nodes };
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

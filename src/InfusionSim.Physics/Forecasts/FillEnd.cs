using InfusionSim.Physics.Air;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Forecasts;

/// <summary>How and at which drive clock a fill ends.</summary>
/// <param name="Outcome">The first that applies of gels first, pot runs dry, stops short, traps air, fills.</param>
/// <param name="FillClock">Drive clock at which the last place that can fill is full [-], whatever the gel time.</param>
/// <param name="Clock">Drive clock at the end: the same, or gel, or that at which a pot is empty [-].</param>
/// <param name="LastCell">Node that fills last [-]; −1 when none can.</param>
/// <param name="UnreachedArea">Area of cloth that the resin cannot reach [m²].</param>
/// <param name="UnreachedCells">Cells of that cloth, each counted when one layer of the part cannot be reached there.</param>
internal sealed record FillEnd(
    Outcome Outcome, double FillClock, double Clock, int LastCell, double UnreachedArea, IReadOnlyList<int> UnreachedCells)
{
    /// <summary>Whether the resin gels before the last place is full.</summary>
    public bool GelsFirst => Outcome == Outcome.GelsFirst;

    /// <summary>Whether resin cannot reach a place, gel or not.</summary>
    public bool StopsShort { get; private init; }

    /// <summary>Whether air that leaks in has driven the resin out of every place again, so that nothing is full and no moment is that of the fill.</summary>
    public bool IsDrivenOut => LastCell < 0 && !StopsShort;

    /// <summary>The pot that is empty before the end; null for none.</summary>
    public EmptyPot? EmptyPot { get; private init; }

    /// <summary>Judges a fill.</summary>
    /// <param name="map">Where the resin goes.</param>
    /// <param name="spots">What stays dry, largest first.</param>
    /// <param name="clock">When.</param>
    /// <param name="goals">What is asked of it.</param>
    /// <param name="density">Density of the resin [kg/m³], for pots that hold a mass.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static FillEnd Of(FillMap map, IReadOnlyList<DrySpot> spots, DriveClock clock, Goals goals, double density, CancellationToken cancellation)
    {
        double[] area = map.Problem.Cells.Area;
        int[] unreached = Unreached(map);
        double unreachedArea = unreached.Sum(cell => area[cell]);
        bool stopsShort = unreachedArea > goals.LargestDrySpot || (map.LastCell < 0 && map.Pockets.Count == 0);
        bool trapsAir = spots.Any(spot => spot.Area > goals.LargestDrySpot);
        (double fillClock, int lastCell) = trapsAir && !map.FollowsGas ? LastOutside(map, spots) : (map.FillClock, map.LastCell);
        EmptyPot? pot = EmptyPot.Of(map, Math.Min(fillClock, clock.GelClock), density, cancellation);
        bool gelsFirst = clock.GelClock < fillClock && pot is null;
        Outcome outcome = gelsFirst ? Outcome.GelsFirst
            : pot is not null ? Outcome.PotRunsDry
            : stopsShort ? Outcome.StopsShort
            : trapsAir ? Outcome.TrapsAir
            : Outcome.Fills;
        return new FillEnd(outcome, fillClock, Math.Min(pot?.Clock ?? fillClock, clock.GelClock), lastCell, unreachedArea, unreached)
        {
            StopsShort = stopsShort,
            EmptyPot = pot,
        };
    }

    private static int[] Unreached(FillMap map)
    {
        FillProblem problem = map.Problem;
        return [.. Enumerable.Range(0, problem.Operator.CellCount)
            .Where(node => problem.PoreVolume[node] > 0 && problem.StaysInPart(node) && !map.Total.Fills[node])
            .Select(problem.CellOf).Distinct()];
    }

    private static (double Clock, int Cell) LastOutside(FillMap map, IReadOnlyList<DrySpot> spots)
    {
        HashSet<int> dry = [.. spots.SelectMany(static spot => spot.Nodes)];
        (double clock, int last) = (0, -1);
        for (int cell = 0; cell < map.Problem.Operator.CellCount; cell++)
        {
            double arrival = map.Arrival[cell];
            if (!double.IsFinite(arrival) || arrival <= clock || dry.Contains(cell)) continue;
            (clock, last) = (arrival, cell);
        }

        return (clock, last);
    }
}

using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Layers;
using InfusionSim.Physics.Lines;

namespace InfusionSim.Physics.Air;

/// <summary>Finds the places that are cut off from every vent while they are still dry.</summary>
/// <remarks>
/// In a fill that never dries a place again, dry places only split. Run backwards they only merge: cells are added in
/// the reverse order of their arrival and joined with the dry cells beside them. A group without a vent cell that meets
/// one with a vent, or gains a vent cell, was sealed off at that moment of the fill. A vent passes air as long as one
/// cell it touches is dry. Air goes up through dry layers as well. Derived.
/// </remarks>
public static class PocketFinder
{
    /// <summary>Smallest number of cells, seen from above, that counts as a pocket: fewer are noise of the grid at the last corner.</summary>
    public const int SmallestPocket = 4;

    /// <summary>
    /// Smallest pocket of a panel [-]: with turned laminate at least twice the square of the longest way, because resin that runs slantwise leaves
    /// single cells behind it for a while.
    /// </summary>
    /// <param name="problem">The panel as numbers.</param>
    public static int SmallestIn(FillProblem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        return problem.Operator.Ways.Skip(2).Where(way => IsInLaminate(problem, way))
            .Select(static way => 2 * (way.Right * way.Right + way.Up * way.Up))
            .Append(SmallestPocket).Max();
    }

    private const double Tie = 1e-6;

    /// <summary>Finds the pockets of a fill, in the order they are sealed.</summary>
    /// <remarks>A vent that is clamped seals what it served at that moment; one that opens in a pocket while it is still dry frees it.</remarks>
    /// <param name="map">The fill.</param>
    public static IReadOnlyList<Pocket> Find(FillMap map)
    {
        ArgumentNullException.ThrowIfNull(map);
        List<Pocket> pockets = [];
        foreach (FillStretch stretch in map.Stretches) FindIn(map, stretch, pockets);
        pockets.Sort(static (first, second) => first.SealedClock.CompareTo(second.SealedClock));
        return pockets;
    }

    private static void FindIn(FillMap map, FillStretch stretch, List<Pocket> pockets)
    {
        FillProblem problem = stretch.Problem;
        double[] arrival = map.Arrival;
        double from = stretch.Start.Clock;
        bool isLast = ReferenceEquals(stretch, map.Stretches[^1]);
        int smallest = SmallestIn(problem);
        List<Pocket> found = [];
        DryGroups groups = RunBackwards(problem, arrival, node => map.Reached[node] && (from == 0 || arrival[node] > from * (1 + Tie)), Seal);
        pockets.RemoveAll(pocket => pocket.Cells.Any(cell => groups.Of(cell) is >= 0 and int group && groups.IsVented(group)));
        HashSet<int> known = [.. pockets.SelectMany(static pocket => pocket.Cells)];
        foreach (int group in groups.Roots())
            if (!groups.IsVented(group) && !groups.Members(group).Any(known.Contains)) Add(groups.Members(group), from);
        pockets.AddRange(found);

        void Seal(IReadOnlyList<int> members, double clock)
        {
            if (isLast || clock <= stretch.End * (1 + Tie)) Add(members, double.IsPositiveInfinity(clock) ? map.FillClock : clock);
        }

        void Add(IReadOnlyList<int> members, double clock)
        {
            if (DryAmong(problem, members, arrival, clock, smallest) is int[] dry) found.Add(new Pocket(dry, clock));
        }
    }

    /// <summary>Drive clock within a stretch of a fill at which a dry place is first cut off from its vent, or comes apart without one [-]; +∞ for none.</summary>
    /// <param name="problem">The panel as numbers, with the clamps as they stand.</param>
    /// <param name="arrival">When the front passes each node; +∞ where it does not within the stretch [-]. [nodes].</param>
    /// <param name="from">Drive clock at which the stretch begins [-].</param>
    internal static double FirstSealed(FillProblem problem, double[] arrival, double from)
    {
        double first = double.PositiveInfinity;
        int smallest = SmallestIn(problem);
        RunBackwards(problem, arrival, node => problem.PoreVolume[node] > 0 && arrival[node] > from * (1 + Tie), Seal, Split);
        return first;

        void Split(IReadOnlyList<IReadOnlyList<int>> parts, double clock)
        {
            if (clock < first && parts.Count(part => DryAmong(problem, part, arrival, clock, smallest) is not null) > 1) first = clock;
        }

        void Seal(IReadOnlyList<int> members, double clock)
        {
            if (clock < first && DryAmong(problem, members, arrival, clock, smallest) is not null) first = clock;
        }
    }

    /// <summary>Adds nodes in the reverse order in which they fill; tells of each group that finds a vent, with the clock at which it lost it, and of groups without one that meet, with the clock at which they came apart.</summary>
    private static DryGroups RunBackwards(
        FillProblem problem,
        double[] arrival,
        Func<int, bool> takesPart,
        Action<IReadOnlyList<int>, double> seal,
        Action<IReadOnlyList<IReadOnlyList<int>>, double>? split = null)
    {
        AirWays ways = new(problem);
        bool[] isVent = new bool[arrival.Length];
        for (int vent = 0; vent < problem.Vents.Count; vent++)
        {
            if (!problem.VentIsOpen[vent]) continue;
            foreach (CellContact contact in problem.Vents[vent].Contacts) isVent[contact.Cell] |= contact.IsBeside;
        }

        DryGroups groups = new(arrival.Length);
        foreach (int cell in Enumerable.Range(0, arrival.Length).Where(takesPart).OrderByDescending(cell => arrival[cell]).ThenByDescending(static cell => cell))
        {
            List<int> beside = [];
            foreach (int neighbour in ways.From(cell))
            {
                int group = groups.Of(neighbour);
                if (group >= 0 && !beside.Contains(group)) beside.Add(group);
            }

            bool vented = isVent[cell] || beside.Any(groups.IsVented);
            foreach (int group in beside)
                if (vented && !groups.IsVented(group)) seal(groups.Members(group), arrival[cell]);
            if (!vented && beside.Count > 1 && double.IsFinite(arrival[cell])) split?.Invoke([.. beside.Select(groups.Members)], arrival[cell]);
            groups.Add(cell, isVent[cell], beside);
        }

        return groups;
    }

    /// <summary>What of a group is dry at a clock, in the order it fills; null when that is too little to count.</summary>
    private static int[]? DryAmong(FillProblem problem, IReadOnlyList<int> members, double[] arrival, double clock, int smallest)
    {
        // In a symmetric panel cells fill at the same moment as the one that seals: they are not dry any more.
        int[] dry = [.. members.Where(cell => arrival[cell] > clock * (1 + Tie)).OrderBy(cell => arrival[cell])];
        if (dry.Length < smallest) return null;
        int seenFromAbove = dry.Where(node => problem.CellOf(node) >= 0 && problem.StaysInPart(node)).Select(problem.CellOf).Distinct().Count();
        return seenFromAbove >= smallest ? dry : null;
    }

    private static bool IsInLaminate(FillProblem problem, StencilWay way)
    {
        int cells = problem.Operator.CellsInLayer;
        return Enumerable.Range(0, problem.Operator.Layers)
            .Where(layer => problem.Stack is null || problem.Stack.Layers[layer].Kind == LayerKind.Laminate)
            .Any(layer => way.Conductance.AsSpan(layer * cells, cells).IndexOfAnyExcept(0) >= 0);
    }
}

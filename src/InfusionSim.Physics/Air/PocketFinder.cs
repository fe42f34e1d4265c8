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
    /// <param name="map">The fill.</param>
    public static IReadOnlyList<Pocket> Find(FillMap map)
    {
        ArgumentNullException.ThrowIfNull(map);
        FillProblem problem = map.Problem;
        AirWays ways = new(problem);
        int smallest = SmallestIn(problem);
        double[] arrival = map.Arrival;
        bool[] isVent = new bool[arrival.Length];
        for (int vent = 0; vent < problem.Vents.Count; vent++)
        {
            if (!problem.VentIsOpen[vent]) continue;
            foreach (CellContact contact in problem.Vents[vent].Contacts) isVent[contact.Cell] |= contact.IsBeside;
        }

        int[] cells = [.. Enumerable.Range(0, arrival.Length).Where(cell => map.Reached[cell])
            .OrderByDescending(cell => arrival[cell]).ThenByDescending(static cell => cell)];
        DryGroups groups = new(arrival.Length);
        List<Pocket> pockets = [];
        foreach (int cell in cells)
        {
            double clock = double.IsFinite(arrival[cell]) ? arrival[cell] : map.FillClock;
            List<int> beside = [];
            foreach (int neighbour in ways.From(cell))
            {
                int group = groups.Of(neighbour);
                if (group >= 0 && !beside.Contains(group)) beside.Add(group);
            }

            bool vented = isVent[cell] || beside.Any(groups.IsVented);
            foreach (int group in beside)
                if (vented && !groups.IsVented(group)) Seal(group, clock);
            groups.Add(cell, isVent[cell], beside);
        }

        foreach (int group in groups.Roots())
            if (!groups.IsVented(group)) Seal(group, 0);
        pockets.Sort(static (first, second) => first.SealedClock.CompareTo(second.SealedClock));
        return pockets;

        void Seal(int group, double clock)
        {
            // In a symmetric panel cells fill at the same moment as the one that seals: they are not dry any more.
            int[] dry = [.. groups.Members(group).Where(cell => arrival[cell] > clock * (1 + Tie)).OrderBy(cell => arrival[cell])];
            if (dry.Length < smallest) return;
            int seenFromAbove = dry.Where(node => problem.CellOf(node) >= 0 && problem.StaysInPart(node)).Select(problem.CellOf).Distinct().Count();
            if (seenFromAbove >= smallest) pockets.Add(new Pocket(dry, clock));
        }
    }

    private static bool IsInLaminate(FillProblem problem, StencilWay way)
    {
        int cells = problem.Operator.CellsInLayer;
        return Enumerable.Range(0, problem.Operator.Layers)
            .Where(layer => problem.Stack is null || problem.Stack.Layers[layer].Kind == LayerKind.Laminate)
            .Any(layer => way.Conductance.AsSpan(layer * cells, cells).IndexOfAnyExcept(0) >= 0);
    }
}

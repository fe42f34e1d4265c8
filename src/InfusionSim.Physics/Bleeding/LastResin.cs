using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Bleeding;

/// <summary>The resin that filled last, and how long each part of it takes to a vent.</summary>
internal sealed class LastResin
{
    private readonly FillProblem problem;
    private readonly List<(double Clock, double Volume, int Node)> parts;
    private readonly double volume;

    private LastResin(FillProblem problem, List<(double Clock, double Volume, int Node)> parts)
    {
        this.problem = problem;
        this.parts = parts;
        volume = parts.Sum(static part => part.Volume);
    }

    /// <summary>Finds the resin that filled last.</summary>
    /// <param name="map">Where the resin goes.</param>
    /// <param name="travel">How long each node's resin takes to a vent.</param>
    /// <param name="end">Drive clock at the end [-].</param>
    public static LastResin Of(FillMap map, TravelToVents travel, double end)
    {
        FillProblem problem = map.Problem;
        int[] nodes = [.. Enumerable.Range(0, problem.Operator.CellCount)
            .Where(node => problem.PoreVolume[node] > 0 && problem.StaysInPart(node) && map.Arrival[node] <= end)
            .OrderByDescending(node => map.Arrival[node])];
        double wanted = AfterFront.LastShare * nodes.Sum(node => problem.PoreVolume[node]), sum = 0;
        List<(double Clock, double Volume, int Node)> parts = [];
        foreach (int node in nodes)
        {
            if (sum >= wanted) break;
            double held = Math.Min(problem.PoreVolume[node], wanted - sum);
            parts.Add((travel.FromMiddle[node], held, node));
            sum += held;
        }

        parts.Sort(static (one, other) => one.Clock.CompareTo(other.Clock));
        return new(problem, parts);
    }

    /// <summary>Drive clock after the end by which a share of it has left [-]; +∞ when so much never does.</summary>
    /// <param name="share">The share [-].</param>
    public double ClockWhenLeft(double share)
    {
        double gone = 0, before = 0, beforeClock = 0;
        foreach ((double clock, double held, _) in parts)
        {
            // Half of a part has left when its middle has.
            double now = (gone + held / 2) / volume;
            if (now >= share) return double.IsFinite(clock) ? beforeClock + (clock - beforeClock) * (share - before) / (now - before) : clock;
            gone += held;
            (before, beforeClock) = (now, clock);
        }

        return parts.Count > 0 ? parts[^1].Clock : double.PositiveInfinity;
    }

    /// <summary>Share of it that has left a while after the end [-].</summary>
    /// <param name="clock">Drive clock since the end [-].</param>
    public double LeftAfter(double clock) => volume > 0 ? parts.Where(part => part.Clock <= clock).Sum(static part => part.Volume) / volume : 0;

    /// <summary>Middle of what has not left a while after the end [m]; null when all has.</summary>
    /// <param name="clock">Drive clock since the end [-].</param>
    public Point2? MiddleOfRest(double clock)
    {
        double rest = 0, x = 0, y = 0;
        foreach ((_, double held, int node) in parts.Where(part => !(part.Clock <= clock)))
        {
            rest += held;
            x += held * problem.Cells.CentroidX[problem.CellOf(node)];
            y += held * problem.Cells.CentroidY[problem.CellOf(node)];
        }

        return rest > 0 ? new Point2(x / rest, y / rest) : null;
    }
}

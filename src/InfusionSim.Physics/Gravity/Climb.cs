using InfusionSim.Numerics.Complementarity;
using InfusionSim.Numerics.Krylov;
using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Gravity;

/// <summary>Which nodes lie low enough for the resin to get to.</summary>
/// <remarks>
/// Resin at rest with every vent shut stands highest: any flow costs pressure. There the pressure falls by ρg per metre from the level
/// in the pot, p = 1 − ρg(z − z₀)/Δp, and where that is not above the pressure under the bag resin never gets. Pots at different levels feed each
/// other through the panel even then; their flow is solved for, and nodes whose pressure comes out below the bag's are shut off until none is left.
/// </remarks>
internal static class Climb
{
    private const int RoundLimit = 100;

    /// <summary>The nodes within reach of a feed that the drive can lift the resin to. [nodes].</summary>
    /// <param name="problem">A problem with heads.</param>
    /// <param name="tolerance">Imbalance of the solution for several pots, relative to the supply [-].</param>
    /// <param name="cancellation">Stops the work.</param>
    public static bool[] Of(FillProblem problem, double tolerance, CancellationToken cancellation)
    {
        double[] heads = problem.Heads!;
        double highest = problem.FeedPressures.Max();
        bool[] climbed = Within(problem, [.. heads.Select(head => head < highest)]);
        if (problem.FeedPressures.All(pressure => pressure == highest)) return climbed;
        for (int round = 0; round < RoundLimit; round++)
        {
            double[] pressure = AtRest(problem, climbed, tolerance, cancellation);
            bool[] wet = [.. climbed.Select((isIn, node) => isIn && pressure[node] > 0)];
            if (wet.AsSpan().SequenceEqual(climbed)) return climbed;
            climbed = Within(problem, wet);
        }

        throw new FlowNotSolvedException("The height to which pots at different levels lift the resin was not found.");
    }

    /// <summary>The nodes within reach of a feed that the drive can lift the resin to, or that are full already. [nodes].</summary>
    /// <param name="problem">A problem with heads.</param>
    /// <param name="start">The panel as a stretch begins.</param>
    /// <param name="tolerance">Imbalance of the solution for several pots, relative to the supply [-].</param>
    /// <param name="cancellation">Stops the work.</param>
    public static bool[] Of(FillProblem problem, FillStart start, double tolerance, CancellationToken cancellation)
    {
        bool[] climbed = Of(problem, tolerance, cancellation);
        return start.IsDry ? climbed : Within(problem, [.. climbed.Select((isIn, node) => isIn || start.IsFull(node))]);
    }

    /// <summary>The problem with the ways to all other nodes shut.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="keeps">Nodes that stay. [nodes].</param>
    public static FillProblem Shut(FillProblem problem, bool[] keeps) => problem with { Operator = Without(problem.Operator, keeps) };

    private static bool[] Within(FillProblem problem, bool[] keeps) => Reach.From(Shut(problem, keeps)).Select((reached, node) => reached && keeps[node]).ToArray();

    private static double[] AtRest(FillProblem problem, bool[] keeps, double tolerance, CancellationToken cancellation)
    {
        LatticeOperator network = Without(problem.Operator, keeps);
        Array.Clear(network.Anchor);
        foreach (var contact in problem.Feeds.SelectMany(static feed => feed.Contacts))
            if (contact.LineNode < 0 && keeps[contact.Cell]) network.Anchor[contact.Cell] += contact.Conductance;
        foreach (var source in problem.Network.Sources)
            if (keeps[source.Node]) network.Anchor[source.Node] += source.Conductance;
        GravityLoad load = new(problem with { Operator = network }, new bool[problem.Operator.NodeCount]);
        Array.Clear(load.FullClock);
        load.SetClock(1);
        double[] supply = problem.Supply(), pressure = new double[supply.Length];
        for (int node = 0; node < supply.Length; node++) supply[node] = keeps[node] ? supply[node] + load.Rate[node] : 0;
        SolveReport report = new SteadySolver(network, keeps).Solve(supply, pressure, tolerance, cancellation);
        if (report.Reason == StopReason.IterationLimit) throw new FlowNotSolvedException($"The pressure of the resin at rest was not found: {report}.");
        return pressure;
    }

    private static LatticeOperator Without(LatticeOperator network, bool[] keeps)
    {
        LatticeOperator shut = new(network.Columns, network.Rows, network.Layers, network.LineNodes);
        foreach (StencilWay way in network.Ways)
        {
            double[] target = shut.Way(way.Right, way.Up).Conductance;
            int step = way.Up * network.Columns + way.Right;
            for (int cell = 0; cell < target.Length; cell++)
                if (way.Conductance[cell] > 0 && keeps[cell] && keeps[cell + step]) target[cell] = way.Conductance[cell];
        }

        for (int cell = 0; cell < network.Above.Length; cell++)
            if (network.Above[cell] > 0 && keeps[cell] && keeps[cell + network.CellsInLayer]) shut.Above[cell] = network.Above[cell];
        foreach ((int first, int second, double conductance) in network.Links)
            if (keeps[first] && keeps[second]) shut.Link(first, second, conductance);
        for (int node = 0; node < shut.NodeCount; node++) shut.Anchor[node] = keeps[node] ? network.Anchor[node] : 0;
        return shut;
    }
}

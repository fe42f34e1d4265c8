using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Air;

/// <summary>Puts the gas of sealed pockets into a state: as a load before it is solved, as pressures and volumes after.</summary>
internal sealed class GasInState
{
    private readonly FillProblem _problem;
    private readonly GasHold _hold;
    private readonly ResinGivenBack _givenBack;
    private readonly List<NodeNeighbour> _neighbours = [];

    /// <summary>Makes it for a stretch.</summary>
    /// <param name="problem">The panel as numbers.</param>
    /// <param name="hold">The gas.</param>
    /// <param name="arrival">When the front passed each node [-]. [nodes].</param>
    public GasInState(FillProblem problem, GasHold hold, double[] arrival)
    {
        _problem = problem;
        _hold = hold;
        _givenBack = new ResinGivenBack(problem, arrival);
    }

    /// <summary>Pressure of the gas at the clock set last, accumulated since the stretch began [-]. [nodes].</summary>
    public double[] Accumulated { get; private set; } = [];

    /// <summary>Pressure of the gas at the clock set last [-]. [nodes].</summary>
    public double[] Pressure { get; private set; } = [];

    /// <summary>What it has moved by then [m³]. [nodes].</summary>
    public double[] Volume { get; private set; } = [];

    /// <summary>How fast that grows with the clock [m³]. [nodes].</summary>
    public double[] Rate { get; private set; } = [];

    /// <summary>Gas in each pocket in the state added last [m³].</summary>
    public IReadOnlyList<double> Volumes { get; private set; } = [];

    /// <summary>Nodes of each pocket in that state: those it had as the stretch began, and those it has opened since.</summary>
    public IReadOnlyList<IReadOnlyList<int>> Nodes { get; private set; } = [];

    /// <summary>Takes the gas at a clock.</summary>
    /// <param name="since">Drive clock since the stretch began [-].</param>
    public void SetClock(double since)
    {
        Accumulated = new double[_problem.PoreVolume.Length];
        Pressure = new double[_problem.PoreVolume.Length];
        _hold.WriteAccumulated(since, Accumulated);
        _hold.WritePressure(since, Pressure);
        Volume = _hold.LoadOf(_problem.Operator, Accumulated);
        Rate = _hold.LoadOf(_problem.Operator, Pressure);
    }

    /// <summary>Adds the gas to a solved state.</summary>
    /// <param name="since">Drive clock since the stretch began [-], that set last.</param>
    /// <param name="start">The panel as the stretch began.</param>
    /// <param name="supply">What feeds give per unit of clock [m³]. [nodes].</param>
    /// <param name="accumulated">Accumulated pressure above that of the gas; becomes the whole [-]. [nodes].</param>
    /// <param name="saturation">How full each node is; corrected where gas keeps nodes from filling [-]. [nodes].</param>
    /// <param name="pressure">Pressure above that of the gas; becomes the whole [-]; may be null. [nodes].</param>
    public void Add(double since, FillStart start, double[] supply, double[] accumulated, double[] saturation, double[]? pressure)
    {
        bool[] isFull = new bool[saturation.Length];
        foreach (int node in _hold.Pockets.SelectMany(static pocket => pocket))
        {
            isFull[node] = accumulated[node] > 0;
            accumulated[node] += Accumulated[node];
            if (pressure is not null) pressure[node] += Pressure[node];
        }

        double[] volumes = new double[_hold.Pockets.Count];
        for (int pocket = 0; pocket < volumes.Length; pocket++)
        {
            foreach (int node in _hold.Pockets[pocket])
            {
                double taken = Inflow(node, since, supply, accumulated), pores = _problem.PoreVolume[node], before = start.Saturation[node];
                saturation[node] = isFull[node] ? 1 : Math.Min(1, before + taken / pores);
                volumes[pocket] += pores * (1 - saturation[node]);
            }
        }

        Nodes = [.. _hold.Pockets.Select(pocket => _givenBack.Settle(pocket, saturation))];
        Volumes = volumes;
    }

    private double Inflow(int node, double since, double[] supply, double[] accumulated)
    {
        double inflow = supply[node] * since - _problem.Operator.Anchor[node] * accumulated[node];
        _problem.Operator.CollectNeighbours(node, _neighbours);
        foreach ((int other, double conductance) in _neighbours) inflow += conductance * (accumulated[other] - accumulated[node]);
        return inflow;
    }
}

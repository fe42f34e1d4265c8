using InfusionSim.Numerics.Lines;
using InfusionSim.Numerics.Multigrid;

namespace InfusionSim.Numerics.Complementarity;

/// <summary>Hands on what a newly wet cell is offered beyond what it can hold to its dry neighbours, so that the front steps as far as the surplus
/// reaches instead of one cell at a time.</summary>
/// <remarks>
/// In one dimension the surplus at a front that lags d cells is just d cells' capacity, up to d over the distance to
/// the feed; elsewhere it is a guess that the next correction mends. The guess never decides the answer. Derived.
/// </remarks>
internal sealed unsafe class SurplusCarrier
{
    private readonly WetSystem _system;
    private readonly Field<double> _capacity;
    private readonly Field<double> _received;
    private readonly Queue<int> _waiting = new();
    private readonly List<int> _touched = [];
    private readonly List<(int At, double Conductance)> _dry = [];

    /// <summary>Makes a carrier.</summary>
    /// <param name="system">Which cells are wet.</param>
    /// <param name="capacity">What each node can hold, scaled.</param>
    public SurplusCarrier(WetSystem system, NodeField capacity)
    {
        _system = system;
        _capacity = capacity.Cells;
        _received = new Field<double>(system.Layout);
    }

    /// <summary>Notes the surplus of a cell that has just become wet.</summary>
    /// <param name="at">Where it lies.</param>
    /// <param name="surplus">What it is offered beyond what it can hold.</param>
    public void Add(int at, double surplus)
    {
        if (surplus <= _capacity.Origin[at]) return;
        _received.Origin[at] = surplus;
        _touched.Add(at);
        _waiting.Enqueue(at);
    }

    /// <summary>Wets the dry cells that the surplus noted so far can fill.</summary>
    public void HandOn()
    {
        double* received = _received.Origin;
        while (_waiting.TryDequeue(out int at))
        {
            double surplus = received[at];
            received[at] = 0;
            double all = CollectDry(at);
            foreach ((int dry, double conductance) in _dry) Offer(dry, surplus * conductance / all);
        }

        foreach (int at in _touched) received[at] = 0;
        _touched.Clear();
    }

    /// <summary>Forgets the surplus noted so far: once the wet set swings to and fro, handing on keeps it swinging.</summary>
    public void Drop()
    {
        foreach (int at in _touched) _received.Origin[at] = 0;
        _touched.Clear();
        _waiting.Clear();
    }

    private double CollectDry(int at)
    {
        _dry.Clear();
        ScaledOperator matrix = _system.Operator;
        int stride = _system.Layout.Stride;
        double all = Consider(at + 1, matrix.East.Origin[at]) + Consider(at - 1, matrix.East.Origin[at - 1])
            + Consider(at + stride, matrix.North.Origin[at]) + Consider(at - stride, matrix.North.Origin[at - stride]);
        foreach (SlantedWay way in matrix.Ways)
            all += Consider(at + way.Step, way.Conductance.Origin[at]) + Consider(at - way.Step, way.Conductance.Origin[at - way.Step]);
        if (matrix.Above is null) return all;
        int next = _system.Layout.LayerStride;
        if (at + next < next * _system.Layout.Layers) all += Consider(at + next, matrix.Above.Origin[at]);
        return at >= next ? all + Consider(at - next, matrix.Above.Origin[at - next]) : all;
    }

    private double Consider(int at, double conductance)
    {
        if (conductance <= 0 || _capacity.Origin[at] <= 0 || _system.IsWet(at)) return 0;
        _dry.Add((at, conductance));
        return conductance;
    }

    private void Offer(int at, double volume)
    {
        double capacity = _capacity.Origin[at];
        double total = _received.Origin[at] += volume;
        _touched.Add(at);
        if (total <= capacity || _system.IsWet(at)) return;
        _system.SetWet(at, wet: true);
        _system.SetImbalance(at, -capacity);
        _received.Origin[at] = total - capacity;
        _waiting.Enqueue(at);
    }
}

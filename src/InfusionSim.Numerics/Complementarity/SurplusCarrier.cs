using InfusionSim.Numerics.Multigrid;

namespace InfusionSim.Numerics.Complementarity;

/// <summary>Hands on what a newly wet cell is offered beyond what it can hold to its dry neighbours, so that the front steps as far as the surplus reaches instead of one cell at a time.</summary>
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

    /// <summary>Makes a carrier.</summary>
    /// <param name="system">Which cells are wet.</param>
    /// <param name="capacity">What each cell can hold, scaled.</param>
    public SurplusCarrier(WetSystem system, Field<double> capacity)
    {
        _system = system;
        _capacity = capacity;
        _received = new Field<double>(system.Layout);
    }

    /// <summary>Notes the surplus of a cell that has just become wet.</summary>
    /// <param name="column">Column.</param>
    /// <param name="row">Row.</param>
    /// <param name="surplus">What it is offered beyond what it can hold.</param>
    public void Add(int column, int row, double surplus)
    {
        int at = _system.Layout.At(column, row);
        if (surplus <= _capacity.Origin[at]) return;
        _received.Origin[at] = surplus;
        _touched.Add(at);
        _waiting.Enqueue(at);
    }

    /// <summary>Wets the dry cells that the surplus noted so far can fill.</summary>
    public void HandOn()
    {
        int stride = _system.Layout.Stride;
        double* east = _system.East.Origin, north = _system.North.Origin, received = _received.Origin;
        while (_waiting.TryDequeue(out int at))
        {
            double surplus = received[at];
            received[at] = 0;
            double right = Dry(at + 1, east[at]), left = Dry(at - 1, east[at - 1]);
            double up = Dry(at + stride, north[at]), down = Dry(at - stride, north[at - stride]);
            double all = right + left + up + down;
            if (all <= 0) continue;
            Offer(at + 1, surplus * right / all);
            Offer(at - 1, surplus * left / all);
            Offer(at + stride, surplus * up / all);
            Offer(at - stride, surplus * down / all);
        }

        foreach (int at in _touched) received[at] = 0;
        _touched.Clear();
    }

    private double Dry(int at, double conductance) =>
        conductance > 0 && _capacity.Origin[at] > 0 && !_system.IsWet(at) ? conductance : 0;

    private void Offer(int at, double volume)
    {
        if (volume <= 0) return;
        double capacity = _capacity.Origin[at];
        double total = _received.Origin[at] += volume;
        _touched.Add(at);
        if (total <= capacity) return;
        int row = Math.DivRem(at, _system.Layout.Stride, out int column);
        _system.SetWet(column, row, wet: true);
        _system.SetImbalance(at, -capacity);
        _received.Origin[at] = total - capacity;
        _waiting.Enqueue(at);
    }
}

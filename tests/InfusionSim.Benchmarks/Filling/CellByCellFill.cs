using InfusionSim.Numerics.Complementarity;
using InfusionSim.Numerics.Lines;
using InfusionSim.Physics.Flow;

namespace InfusionSim.Benchmarks.Filling;

/// <summary>
/// The fill as a scheme that steps from one full cell to the next, each pressure from the one before and the same multigrid: what the complementarity
/// solution is compared with.
/// </summary>
internal sealed unsafe class CellByCellFill
{
    private readonly WetSystem _system;
    private readonly NodeField _supply, _pressure;
    private readonly double[] _capacity, _share;
    private readonly bool[] _full;
    private readonly HashSet<int> _front = [];
    private readonly int _columns;

    /// <summary>Starts with a dry panel, or on the way.</summary>
    /// <param name="problem">The panel as numbers.</param>
    /// <param name="start">A state with its pressure to go on from; null for a dry panel.</param>
    public CellByCellFill(FillProblem problem, FillState? start = null)
    {
        _columns = problem.Operator.Columns;
        _system = new WetSystem(problem.Operator);
        _supply = _system.MakeField();
        _pressure = _system.MakeField();
        _capacity = [.. problem.PoreVolume.Select(volume => volume / _system.ConductanceScale)];
        _share = new double[_capacity.Length];
        _full = new bool[_capacity.Length];
        double[] supply = problem.Supply();
        _supply.CopyFrom(supply, 1 / _system.ConductanceScale);
        for (int cell = 0; cell < supply.Length; cell++)
            if (supply[cell] > 0 && _capacity[cell] > 0) _front.Add(cell);
        if (start is null) return;
        Clock = start.Clock;
        _pressure.CopyFrom(start.Pressure, 1);
        for (int cell = 0; cell < _share.Length; cell++) _share[cell] = start.Saturation[cell];
        for (int cell = 0; cell < _share.Length; cell++)
            if (start.AccumulatedPressure[cell] > 0) Fill(cell);
    }

    /// <summary>Drive clock reached [-].</summary>
    public double Clock { get; private set; }

    /// <summary>Cells filled so far [-].</summary>
    public int Events { get; private set; }

    /// <summary>Fills cell after cell.</summary>
    /// <param name="events">Most cells to fill.</param>
    /// <returns>Whether anything is left to fill.</returns>
    public bool Step(int events)
    {
        for (int k = 0; k < events; k++)
        {
            int next = -1;
            double shortest = double.PositiveInfinity;
            foreach (int cell in _front)
            {
                double rate = Inflow(cell) / _capacity[cell];
                if (rate <= 0) continue;
                double wait = (1 - _share[cell]) / rate;
                if (wait < shortest) (shortest, next) = (wait, cell);
            }

            if (next < 0) return false;
            foreach (int cell in _front) _share[cell] = Math.Min(1, _share[cell] + shortest * Inflow(cell) / _capacity[cell]);
            Clock += shortest;
            Fill(next);
            _system.SolveLinear(_pressure, _supply, FillRun.Tolerance, default);
            Events++;
        }

        return _front.Count > 0;
    }

    private void Fill(int cell)
    {
        int column = cell % _columns, row = cell / _columns;
        _share[cell] = 1;
        _full[cell] = true;
        _front.Remove(cell);
        _system.SetWet(_system.AtOf(cell), wet: true);
        if (column > 0) Reach(cell - 1, _system.Operator.East.Row(row)[column - 1]);
        if (column + 1 < _columns) Reach(cell + 1, _system.Operator.East.Row(row)[column]);
        if (row > 0) Reach(cell - _columns, _system.Operator.North.Row(row - 1)[column]);
        if (cell + _columns < _full.Length) Reach(cell + _columns, _system.Operator.North.Row(row)[column]);
    }

    private void Reach(int cell, double conductance)
    {
        if (conductance > 0 && !_full[cell] && _capacity[cell] > 0) _front.Add(cell);
    }

    private double Inflow(int cell)
    {
        int at = _system.AtOf(cell);
        return _supply.Cells.Origin[at] - _system.Outflow(_pressure, at);
    }
}

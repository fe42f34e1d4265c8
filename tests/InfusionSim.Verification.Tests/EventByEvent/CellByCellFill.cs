using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Flow;

namespace InfusionSim.Verification.Tests.EventByEvent;

/// <summary>Fills a panel cell by cell with exact steps: the textbook scheme of control volumes, kept to check the solver that takes no steps.</summary>
/// <remarks>
/// Full cells have a pressure, all others stand at the vents'. One direct solve gives the flow into every cell that is
/// not full; the next event is the moment the first of them is full, so nothing is ever clipped. After
/// Bruschke and Advani, Polym. Compos. 11 (1990) 398 (from memory), with the step cut at the event.
/// </remarks>
public sealed class CellByCellFill
{
    private readonly FillProblem problem;
    private readonly GrowingCholesky network = new();
    private readonly List<int> fullCells = [];
    private readonly int[] unknownOf;
    private readonly double[] feedInflow;
    private readonly bool[] full;
    private readonly double[] volume;
    private readonly double[] accumulated;
    private readonly double[] pressure;

    private CellByCellFill(FillProblem problem)
    {
        this.problem = problem;
        feedInflow = WetNetwork.FeedInflowOf(problem);
        int count = problem.Operator.NodeCount;
        unknownOf = new int[count];
        Array.Fill(unknownOf, -1);
        full = new bool[count];
        volume = new double[count];
        accumulated = new double[count];
        pressure = new double[count];
        HalfFullClock = new double[count];
        Array.Fill(HalfFullClock, double.PositiveInfinity);
        FullClock = [.. HalfFullClock];
    }

    /// <summary>Clock at which each cell is half full [-]; +∞ where it never is.</summary>
    public double[] HalfFullClock { get; }

    /// <summary>Clock at which each cell is full [-]; +∞ where it never is.</summary>
    public double[] FullClock { get; }

    /// <summary>Clock at which the last cell is full [-].</summary>
    public double FillClock { get; private set; }

    /// <summary>Cell that fills last.</summary>
    public int LastCell { get; private set; } = -1;

    /// <summary>Linear solves made [-].</summary>
    public int Events { get; private set; }

    /// <summary>States at the clocks asked for, in their order.</summary>
    public List<CellByCellState> States { get; } = [];

    /// <summary>Fills a panel.</summary>
    /// <param name="problem">Conductances, pore volumes and lines.</param>
    /// <param name="clocks">Clocks to report, rising [-].</param>
    public static CellByCellFill Run(FillProblem problem, IReadOnlyList<double> clocks)
    {
        var fill = new CellByCellFill(problem);
        fill.Fill(clocks);
        return fill;
    }

    private void Fill(IReadOnlyList<double> clocks)
    {
        double clock = 0;
        int reported = 0;
        double[] inflow = new double[full.Length];
        while (true)
        {
            SolvePressure();
            Events++;
            double step = double.PositiveInfinity;
            for (int cell = 0; cell < full.Length; cell++)
            {
                inflow[cell] = 0;
                if (full[cell] || problem.PoreVolume[cell] == 0) continue;
                inflow[cell] = InflowOf(cell);
                if (inflow[cell] > 0) step = Math.Min(step, (problem.PoreVolume[cell] - volume[cell]) / inflow[cell]);
            }

            for (; reported < clocks.Count && clocks[reported] <= clock + step; reported++)
                States.Add(StateAfter(clocks[reported], clocks[reported] - clock, inflow));
            if (double.IsInfinity(step)) return;
            Advance(clock, step, inflow);
            clock += step;
            FillClock = clock;
        }
    }

    private void Advance(double clock, double step, double[] inflow)
    {
        for (int cell = 0; cell < full.Length; cell++)
        {
            if (full[cell])
            {
                accumulated[cell] += pressure[cell] * step;
                continue;
            }

            if (inflow[cell] <= 0) continue;
            double capacity = problem.PoreVolume[cell], before = volume[cell];
            volume[cell] += inflow[cell] * step;
            if (before < capacity / 2 && volume[cell] >= capacity / 2)
                HalfFullClock[cell] = clock + (capacity / 2 - before) / inflow[cell];

            // Room for rounding alone: the cell that set the step is full by construction.
            if (volume[cell] < capacity * (1 - 1e-13)) continue;
            FullClock[cell] = clock + step;
            MarkFull(cell);
            LastCell = cell;
        }
    }

    private void MarkFull(int cell)
    {
        full[cell] = true;
        network.Add(
            [.. Neighbours(cell).Where(pair => unknownOf[pair.Cell] >= 0).Select(pair => (unknownOf[pair.Cell], -pair.Conductance))],
            problem.Operator.DiagonalOf(cell), feedInflow[cell]);
        unknownOf[cell] = fullCells.Count;
        fullCells.Add(cell);
    }

    private void SolvePressure()
    {
        double[] x = new double[fullCells.Count];
        network.Solve(x);
        for (int k = 0; k < x.Length; k++) pressure[fullCells[k]] = x[k];
    }

    private double InflowOf(int cell)
    {
        double flow = feedInflow[cell];
        foreach ((int neighbour, double conductance) in Neighbours(cell)) flow += conductance * pressure[neighbour];
        return flow;
    }

    private List<(int Cell, double Conductance)> Neighbours(int cell)
    {
        List<NodeNeighbour> neighbours = [];
        problem.Operator.CollectNeighbours(cell, neighbours);
        return neighbours.ConvertAll(neighbour => (neighbour.Node, neighbour.Conductance));
    }

    private CellByCellState StateAfter(double clock, double part, double[] inflow)
    {
        double[] saturation = new double[full.Length], sum = new double[full.Length];
        for (int cell = 0; cell < full.Length; cell++)
        {
            if (problem.PoreVolume[cell] == 0) continue;
            saturation[cell] = full[cell] ? 1 : (volume[cell] + inflow[cell] * part) / problem.PoreVolume[cell];
            sum[cell] = full[cell] ? accumulated[cell] + pressure[cell] * part : 0;
        }

        return new CellByCellState(clock, [.. full], saturation, sum);
    }
}

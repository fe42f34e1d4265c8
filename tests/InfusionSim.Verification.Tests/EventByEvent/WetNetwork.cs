using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Lines;

namespace InfusionSim.Verification.Tests.EventByEvent;

/// <summary>Solves for all cells with cloth at once; direct, with a solver of its own.</summary>
public sealed class WetNetwork
{
    private readonly LatticeOperator conductances;
    private readonly int[] order;
    private readonly int[] position;
    private readonly int width;
    private readonly double[] rows;
    private readonly double[] rightSide;

    /// <summary>Prepares a problem.</summary>
    /// <param name="problem">Conductances, pore volumes and lines.</param>
    public WetNetwork(FillProblem problem)
    {
        conductances = problem.Operator;
        int columns = conductances.Columns, count = conductances.CellCount;

        // Numbering along the shorter side keeps the band narrow.
        order = columns <= conductances.Rows
            ? [.. Enumerable.Range(0, count)]
            : [.. Enumerable.Range(0, count).OrderBy(cell => cell % columns).ThenBy(cell => cell / columns)];
        width = Math.Min(columns, conductances.Rows);
        position = new int[count];
        rows = new double[count * (width + 1)];
        rightSide = new double[count];

    }

    /// <summary>Flow from the feeds into each cell while it stands at zero pressure [m³ per unit of the clock].</summary>
    /// <param name="problem">Conductances, pore volumes and lines.</param>
    public static double[] FeedInflowOf(FillProblem problem)
    {
        double[] inflow = new double[problem.Operator.NodeCount];
        for (int k = 0; k < problem.Feeds.Count; k++)
            foreach (CellContact contact in problem.Feeds[k].Contacts)
                if (contact.LineNode < 0) inflow[contact.Cell] += contact.Conductance * problem.FeedPressures[k];
        foreach (var source in problem.Network.Sources) inflow[source.Node] += source.Conductance * problem.FeedPressures[source.Line];
        return inflow;
    }

    /// <summary>Solves (A x)ᵢ = bᵢ in the chosen cells with x = 0 in all others.</summary>
    /// <param name="chosen">Whether a cell is one of the set; [rows × columns], x fastest.</param>
    /// <param name="load">b; [rows × columns], x fastest.</param>
    /// <param name="answer">x on return; [rows × columns], x fastest.</param>
    public void Solve(bool[] chosen, double[] load, double[] answer)
    {
        Array.Clear(answer);
        Array.Fill(position, -1);
        int n = 0;
        foreach (int cell in order)
            if (chosen[cell]) position[cell] = n++;
        Array.Clear(rows, 0, n * (width + 1));
        int columns = conductances.Columns;
        foreach (int cell in order)
        {
            int k = position[cell];
            if (k < 0) continue;
            rightSide[k] = load[cell];
            rows[k * (width + 1) + width] = conductances.DiagonalOf(cell);
            if (cell % columns != columns - 1) Couple(cell, cell + 1, conductances.East[cell]);
            if (cell + columns < conductances.CellCount) Couple(cell, cell + columns, conductances.North[cell]);
        }

        new BandedCholesky(width).Solve(rows, n, rightSide);
        foreach (int cell in order)
            if (position[cell] >= 0) answer[cell] = rightSide[position[cell]];

        void Couple(int one, int other, double conductance)
        {
            int a = position[one], b = position[other];
            if (b < 0 || conductance == 0) return;
            int low = Math.Min(a, b), high = Math.Max(a, b);
            rows[high * (width + 1) + width - (high - low)] -= conductance;
        }
    }
}

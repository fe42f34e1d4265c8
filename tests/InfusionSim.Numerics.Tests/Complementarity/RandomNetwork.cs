using InfusionSim.Numerics.Stencils;

namespace InfusionSim.Numerics.Tests.Complementarity;

/// <summary>Random conductances in several layers with slanted ways, a top layer over half the grid, and a line of nodes with a branch that feeds it.</summary>
internal sealed class RandomNetwork
{
    public RandomNetwork(int columns, int rows, int layers, bool slanted, int lineNodes, double spread, int seed)
    {
        Random random = new(seed);
        Operator = new LatticeOperator(columns, rows, layers, lineNodes);
        Capacity = new double[Operator.NodeCount];
        Supply = new double[Operator.NodeCount];
        bool[] present = new bool[Operator.CellCount];
        for (int cell = 0; cell < present.Length; cell++)
        {
            bool isTop = layers > 1 && cell / (columns * rows) == layers - 1;
            present[cell] = random.NextDouble() >= 0.05 && !(isTop && cell % columns > columns / 2);
        }

        (int Right, int Up)[] ways = slanted ? [(1, 0), (0, 1), (1, 1), (-1, 2), (3, 1)] : [(1, 0), (0, 1)];
        foreach ((int right, int up) in ways)
        {
            double[] conductance = Operator.Way(right, up).Conductance;
            for (int cell = 0; cell < present.Length; cell++)
            {
                int column = cell % columns + right, row = cell / columns % rows + up, other = cell + up * columns + right;
                if (column < 0 || column >= columns || row >= rows || !present[cell] || !present[other]) continue;
                conductance[cell] = 1e-13 * Lognormal(random, spread);
            }
        }

        for (int cell = 0; cell < present.Length; cell++)
        {
            if (!present[cell]) continue;
            Capacity[cell] = 1e-9 * (0.5 + random.NextDouble());
            int above = cell + columns * rows;
            if (above < present.Length && present[above]) Operator.Above[cell] = 1e-13 * Math.Pow(10, random.Next(-4, 5));
        }

        if (lineNodes == 0) Feed(present, columns, rows);
        else Line(present, random);
        KeepReached();
    }

    public LatticeOperator Operator { get; }

    public double[] Capacity { get; }

    public double[] Supply { get; }

    public bool[] TakesPart => [.. Capacity.Select((volume, node) => volume > 0 || node >= Operator.CellCount)];

    /// <summary>What each node is offered, less what it hands on: supply · clock − A w.</summary>
    public double[] Offered(double[] w, double clock)
    {
        double[] offered = new double[w.Length];
        List<NodeNeighbour> beside = [];
        for (int node = 0; node < w.Length; node++)
        {
            offered[node] = Supply[node] * clock - Operator.Anchor[node] * w[node];
            Operator.CollectNeighbours(node, beside);
            foreach ((int other, double conductance) in beside) offered[node] -= conductance * (w[node] - w[other]);
        }

        return offered;
    }

    private static double Lognormal(Random random, double spread) =>
        Math.Exp(spread * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble()));

    private void Feed(bool[] present, int columns, int rows)
    {
        for (int row = 0; row < rows; row++)
        {
            if (!present[row * columns]) continue;
            Operator.Anchor[row * columns] = Supply[row * columns] = 2e-13;
        }
    }

    // A chain along the left edge, fed through a branch at its middle; its last node holds nothing.
    private void Line(bool[] present, Random random)
    {
        int first = Operator.CellCount, chain = Operator.LineNodes - 2, middle = first + chain / 2;
        for (int k = 0; k < chain; k++)
        {
            Capacity[first + k] = 2e-10 * random.NextDouble();
            if (k + 1 < chain) Operator.Link(first + k, first + k + 1, 1e-11);
            int cell = k % Operator.Rows * Operator.Columns;
            if (present[cell]) Operator.Link(cell, first + k, 2e-13);

            // A slanted stretch touches several cells, and each of those several stretches.
            int inside = cell + Math.Min(k, Operator.Columns - 2);
            if (k % 3 == 0 && inside + 1 < Operator.CellsInLayer && present[inside] && present[inside + 1])
            {
                Operator.Link(inside, first + k, 4e-13 * random.NextDouble());
                Operator.Link(inside + 1, first + k, 4e-10 * random.NextDouble());
                Operator.Link(inside, first + (k + 1) % chain, 1e-13);
            }
        }

        Operator.Link(middle, first + chain, 3e-12);
        Operator.Link(first + chain, first + chain + 1, 3e-12);
        Capacity[first + chain] = 1e-9;
        Operator.Anchor[first + chain + 1] = Supply[first + chain + 1] = 5e-12;
    }

    private void KeepReached()
    {
        bool[] reached = new bool[Capacity.Length];
        Stack<int> open = new(Enumerable.Range(0, Capacity.Length).Where(node => Supply[node] > 0));
        List<NodeNeighbour> beside = [];
        while (open.TryPop(out int node))
        {
            if (reached[node]) continue;
            reached[node] = true;
            Operator.CollectNeighbours(node, beside);
            foreach (NodeNeighbour other in beside) open.Push(other.Node);
        }

        for (int node = 0; node < Capacity.Length; node++) if (!reached[node]) Capacity[node] = 0;
    }
}

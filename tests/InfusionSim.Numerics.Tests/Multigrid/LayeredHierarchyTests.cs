using InfusionSim.Numerics.Complementarity;
using InfusionSim.Numerics.Lines;
using InfusionSim.Numerics.Multigrid;
using InfusionSim.Numerics.Tests.Complementarity;

namespace InfusionSim.Numerics.Tests.Multigrid;

public unsafe class LayeredHierarchyTests
{
    public static TheoryData<int, int, int, bool, int, int> Networks => new()
    {
        { 37, 26, 3, false, 0, 1327 },
        { 31, 33, 2, true, 0, 2441 },
        { 29, 30, 1, false, 22, 3559 },
        { 40, 21, 3, true, 17, 4673 },
    };

    [Theory]
    [MemberData(nameof(Networks))]
    public void Cycle_RandomLoads_IsASymmetricPositiveOperator(int columns, int rows, int layers, bool slanted, int lineNodes, int seed)
    {
        Grids grids = new(new RandomNetwork(columns, rows, layers, slanted, lineNodes, 0.7, seed));
        grids.Wet(static _ => true);
        NodeField first = grids.Load(seed + 1), second = grids.Load(seed + 2);
        NodeField imageOfFirst = grids.Cycle(first), imageOfSecond = grids.Cycle(second);
        double there = Dot(imageOfFirst, second), back = Dot(first, imageOfSecond);
        double size = Math.Sqrt(Dot(imageOfFirst, first) * Dot(imageOfSecond, second));

        // Single precision, a few thousand terms, couplings through the thickness up to ten thousand times those in the plane.
        Math.Abs(there - back).ShouldBeLessThan(1e-3 * size);
        Dot(imageOfFirst, first).ShouldBeGreaterThan(0);
    }

    [Theory]
    [MemberData(nameof(Networks))]
    public void Update_AfterManySmallChanges_EqualsAFreshHierarchy(int columns, int rows, int layers, bool slanted, int lineNodes, int seed)
    {
        RandomNetwork network = new(columns, rows, layers, slanted, lineNodes, 0.7, seed);
        Grids kept = new(network);
        bool[] wet = new bool[network.Capacity.Length];
        Random random = new(seed + 5);
        for (int round = 0; round < 25; round++)
        {
            int middle = random.Next(network.Operator.CellCount), inLayer = columns * rows;
            for (int node = 0; node < wet.Length; node++)
            {
                int dx = node % columns - middle % columns, dy = node / columns % rows - middle / columns % rows;
                if (node < network.Operator.CellCount ? dx * dx + dy * dy < 30 && (node / inLayer != middle / inLayer || random.Next(3) > 0) : random.Next(4) == 0) wet[node] = round % 3 != 2;
            }

            kept.Wet(node => wet[node]);
        }

        Grids fresh = new(network);
        fresh.Wet(node => wet[node]);
        for (int k = 0; k < kept.Hierarchy.Levels.Count; k++)
        {
            MultigridLevel a = kept.Hierarchy.Levels[k], b = fresh.Hierarchy.Levels[k];
            for (int cell = 0; cell < a.Layout.Columns * a.Layout.Rows * a.Layout.Layers; cell++)
            {
                int at = a.Layout.At(cell % a.Layout.Columns, cell / a.Layout.Columns % a.Layout.Rows, cell / (a.Layout.Columns * a.Layout.Rows));
                string where = $"level {k}, place {at}";
                Same(a.Diagonal, b.Diagonal, at, where);
                Same(a.Rest, b.Rest, at, where);
                Same(a.Slack, b.Slack, at, where);
                Same(a.InversePivot, b.InversePivot, at, where);
                Same(a.East, b.East, at, where);
                Same(a.North, b.North, at, where);
                Same(a.NorthEast, b.NorthEast, at, where);
                Same(a.NorthWest, b.NorthWest, at, where);
                Same(a.Above, b.Above, at, where);
            }
        }

        NodeField load = kept.Load(seed + 9);
        Dot(kept.Cycle(load), load).ShouldBe(Dot(fresh.Cycle(load), load), 1e-6 * Dot(load, load));
    }

    [Fact]
    public void Cycle_LinesThroughTheGridAndWetSetsOfAnyShape_IsPositive()
    {
        for (int seed = 11003; seed < 11043; seed++)
        {
            Random random = new(seed);
            RandomNetwork network = new(16 + random.Next(20), 12 + random.Next(20), 1, false, 24, 0.7, seed);
            Grids grids = new(network);
            for (int round = 0; round < 6; round++)
            {
                double share = random.NextDouble();
                bool[] wet = [.. Enumerable.Range(0, network.Capacity.Length).Select(_ => random.NextDouble() < share)];
                grids.Wet(node => wet[node]);
                NodeField load = grids.Load(seed + round);
                double energy = Dot(grids.Cycle(load), load);
                energy.ShouldBeGreaterThan(0, $"seed {seed}, round {round}");
            }
        }
    }

    private static void Same(Field<float>? a, Field<float>? b, int at, string where)
    {
        if (a is not null) (a.Origin[at] == b!.Origin[at]).ShouldBeTrue(where);
    }

    private static double Dot(NodeField a, NodeField b)
    {
        PaddedLayout layout = a.Cells.Layout;
        double sum = a.Lines.Zip(b.Lines, static (x, y) => x * y).Sum();
        for (int line = 0; line < layout.Layers * layout.Rows; line++)
        {
            double* x = a.Cells.Row(line % layout.Rows, line / layout.Rows), y = b.Cells.Row(line % layout.Rows, line / layout.Rows);
            for (int column = 0; column < layout.Columns; column++) sum += x[column] * y[column];
        }

        return sum;
    }

    /// <summary>A hierarchy over a random network, with its wet nodes.</summary>
    private sealed class Grids
    {
        private readonly ScaledOperator _operator;
        private readonly LineSystem? _lines;
        private readonly int _nodes;

        public Grids(RandomNetwork network)
        {
            _operator = new ScaledOperator(network.Operator);
            _lines = network.Operator.LineNodes > 0 ? new LineSystem(network.Operator, _operator.Scale) : null;
            Hierarchy = new MultigridHierarchy(_operator.MakeFinestLevel(), _lines);
            _nodes = network.Capacity.Length;
        }

        public MultigridHierarchy Hierarchy { get; }

        private MultigridLevel Finest => Hierarchy.Levels[0];

        public void Wet(Func<int, bool> isWet)
        {
            PaddedLayout layout = Finest.Layout;
            int cells = layout.Columns * layout.Rows * layout.Layers;
            for (int cell = 0; cell < cells; cell++)
            {
                int column = cell % layout.Columns, row = cell / layout.Columns % layout.Rows, layer = cell / (layout.Columns * layout.Rows);
                int at = layout.At(column, row, layer);
                bool wet = isWet(cell) && _operator.Diagonal.Origin[at] > 0;
                if (Finest.Diagonal.Origin[at] > 0 == wet) continue;
                Finest.Diagonal.Origin[at] = wet ? _operator.Diagonal.Origin[at] : 0;
                Finest.Rest.Origin[at] = wet ? _operator.Rest.Origin[at] : 0;
                Finest.EliminateColumn(column, row);
                Finest.Changed.Add(column, row, layer);
                Finest.ChangedColumns.Add(column, row, 0);
                Finest.Active.Include(row, column, column + 1);
            }

            for (int node = cells; node < _nodes; node++) _lines!.IsWet[node - cells] = isWet(node);
            Hierarchy.MarkLinesChanged();
            Hierarchy.Update();
        }

        public NodeField Load(int seed)
        {
            NodeField field = new(Finest.Layout, _lines?.Count ?? 0);
            Random random = new(seed);
            double[] values = [.. Enumerable.Range(0, _nodes).Select(_ => random.NextDouble() - 0.5)];
            field.CopyFrom(values, 1);
            PaddedLayout layout = Finest.Layout;
            for (int line = 0; line < layout.Layers * layout.Rows; line++)
            {
                double* row = field.Cells.Row(line % layout.Rows, line / layout.Rows);
                float* diagonal = Finest.Diagonal.Row(line % layout.Rows, line / layout.Rows);
                for (int column = 0; column < layout.Columns; column++) if (diagonal[column] <= 0) row[column] = 0;
            }

            for (int node = 0; node < field.Lines.Length; node++) if (!_lines!.IsWet[node]) field.Lines[node] = 0;
            return field;
        }

        public NodeField Cycle(NodeField load)
        {
            PaddedLayout layout = Finest.Layout;
            NodeField image = new(layout, load.Lines.Length);
            for (int line = 0; line < layout.Layers * layout.Rows; line++)
            {
                double* from = load.Cells.Row(line % layout.Rows, line / layout.Rows);
                float* to = Finest.Load.Row(line % layout.Rows, line / layout.Rows);
                for (int column = 0; column < layout.Columns; column++) to[column] = (float)from[column];
            }

            load.Lines.CopyTo(Hierarchy.FinestLines?.Load ?? [], 0);
            Hierarchy.Cycle();
            for (int line = 0; line < layout.Layers * layout.Rows; line++)
            {
                float* from = Finest.Value.Row(line % layout.Rows, line / layout.Rows);
                double* to = image.Cells.Row(line % layout.Rows, line / layout.Rows);
                for (int column = 0; column < layout.Columns; column++) to[column] = from[column];
            }

            Hierarchy.FinestLines?.Value.CopyTo(image.Lines, 0);
            return image;
        }
    }
}

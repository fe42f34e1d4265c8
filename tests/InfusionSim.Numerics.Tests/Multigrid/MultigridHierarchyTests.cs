using InfusionSim.Numerics.Multigrid;
using InfusionSim.Numerics.Tests.Complementarity;

namespace InfusionSim.Numerics.Tests.Multigrid;

public unsafe class MultigridHierarchyTests
{
    [Theory]
    [InlineData(37, 22, 1.0, 1009)]
    [InlineData(64, 64, 1.5, 2003)]
    public void Cycle_RandomLoads_IsASymmetricPositiveOperator(int columns, int rows, double spread, int seed)
    {
        MultigridHierarchy hierarchy = Make(new RandomMatrix(columns, rows, spread, seed));
        SetTakingPart(hierarchy, AllOf(hierarchy));
        hierarchy.Update();
        float[] first = Load(columns * rows, seed + 1), second = Load(columns * rows, seed + 2);
        float[] imageOfFirst = Cycle(hierarchy, first), imageOfSecond = Cycle(hierarchy, second);

        double there = Dot(imageOfFirst, second), back = Dot(first, imageOfSecond);
        double size = Math.Sqrt(Dot(imageOfFirst, first) * Dot(imageOfSecond, second));

        // Single precision, a few thousand terms.
        Math.Abs(there - back).ShouldBeLessThan(1e-4 * size);
        Dot(imageOfFirst, first).ShouldBeGreaterThan(0);
    }

    [Fact]
    public void Update_AfterManySmallChanges_EqualsAFreshHierarchy()
    {
        RandomMatrix matrix = new(53, 38, 1.2, 7919);
        MultigridHierarchy kept = Make(matrix);
        bool[] takesPart = new bool[53 * 38];
        Random random = new(104729);
        for (int round = 0; round < 30; round++)
        {
            int middle = random.Next(takesPart.Length);
            for (int cell = 0; cell < takesPart.Length; cell++)
            {
                int dx = cell % 53 - middle % 53, dy = cell / 53 - middle / 53;
                if (dx * dx + dy * dy < 40) takesPart[cell] = round % 3 != 2;
            }

            SetTakingPart(kept, takesPart);
            kept.Update();
        }

        MultigridHierarchy fresh = Make(matrix);
        SetTakingPart(fresh, takesPart);
        fresh.Update();
        for (int k = 0; k < kept.Levels.Count; k++)
        {
            MultigridLevel a = kept.Levels[k], b = fresh.Levels[k];
            for (int row = 0; row < a.Layout.Rows; row++)
            {
                for (int column = 0; column < a.Layout.Columns; column++)
                {
                    string where = $"level {k}, column {column}, row {row}";
                    (a.Diagonal.Row(row)[column] == b.Diagonal.Row(row)[column]).ShouldBeTrue(where);
                    (a.Slack.Row(row)[column] == b.Slack.Row(row)[column]).ShouldBeTrue(where);
                    (a.East.Row(row)[column] == b.East.Row(row)[column]).ShouldBeTrue(where);
                    (a.North.Row(row)[column] == b.North.Row(row)[column]).ShouldBeTrue(where);
                    if (a.NorthEast is null) continue;
                    (a.NorthEast.Row(row)[column] == b.NorthEast!.Row(row)[column]).ShouldBeTrue(where);
                    (a.NorthWest!.Row(row)[column] == b.NorthWest!.Row(row)[column]).ShouldBeTrue(where);
                }
            }
        }
    }

    private static MultigridHierarchy Make(RandomMatrix matrix)
    {
        MultigridLevel finest = new(new PaddedLayout(matrix.Operator.Columns, matrix.Operator.Rows), hasDiagonalNeighbours: false);
        for (int cell = 0; cell < matrix.Capacity.Length; cell++)
        {
            int at = finest.Layout.At(cell % matrix.Operator.Columns, cell / matrix.Operator.Columns);
            finest.East.Origin[at] = (float)(matrix.Operator.East[cell] * 1e13);
            finest.North.Origin[at] = (float)(matrix.Operator.North[cell] * 1e13);
            finest.Slack.Origin[at] = (float)(matrix.Operator.Anchor[cell] * 1e13);
            finest.Diagonal.Origin[at] = matrix.TakesPart[cell] ? (float)(matrix.Operator.DiagonalOf(cell) * 1e13) : 0;
        }

        s_full = new float[matrix.Capacity.Length];
        finest.Diagonal.CopyTo(s_full);
        return new MultigridHierarchy(finest);
    }

    [ThreadStatic]
    private static float[]? s_full;

    private static bool[] AllOf(MultigridHierarchy hierarchy) =>
        [.. Enumerable.Repeat(true, hierarchy.Levels[0].Layout.Columns * hierarchy.Levels[0].Layout.Rows)];

    private static void SetTakingPart(MultigridHierarchy hierarchy, bool[] takesPart)
    {
        MultigridLevel finest = hierarchy.Levels[0];
        for (int cell = 0; cell < takesPart.Length; cell++)
        {
            int column = cell % finest.Layout.Columns, row = cell / finest.Layout.Columns;
            float diagonal = takesPart[cell] ? s_full![cell] : 0;
            if (finest.Diagonal.Row(row)[column] == diagonal) continue;
            finest.Diagonal.Row(row)[column] = diagonal;
            finest.EliminateColumn(column, row);
            finest.Changed.Add(column, row, 0);
            finest.Active.Include(row, column, column + 1);
        }
    }

    private static float[] Load(int count, int seed)
    {
        Random random = new(seed);
        return [.. Enumerable.Range(0, count).Select(_ => (float)random.NextDouble() - 0.5f)];
    }

    private static float[] Cycle(MultigridHierarchy hierarchy, float[] load)
    {
        hierarchy.Levels[0].Load.CopyFrom(load);
        hierarchy.Cycle();
        float[] value = new float[load.Length];
        hierarchy.Levels[0].Value.CopyTo(value);
        return value;
    }

    private static double Dot(float[] a, float[] b) => a.Zip(b, static (x, y) => (double)x * y).Sum();
}

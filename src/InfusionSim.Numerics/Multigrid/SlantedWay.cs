using InfusionSim.Numerics.Stencils;

namespace InfusionSim.Numerics.Multigrid;

/// <summary>A way of the finest grid to cells that are no neighbours in the row or the column, laid out for passes over rows.</summary>
internal sealed unsafe class SlantedWay
{
    /// <summary>Lays out a way.</summary>
    /// <param name="way">The way.</param>
    /// <param name="layout">Where cells lie; its margin is at least as wide as the way is high.</param>
    /// <param name="scale">What conductances are divided by.</param>
    public SlantedWay(StencilWay way, PaddedLayout layout, double scale)
    {
        Right = way.Right;
        Up = way.Up;
        Step = way.Up * layout.Stride + way.Right;
        Conductance = new(layout);
        Single = new(layout);
        int columns = layout.Columns;
        for (int cell = 0; cell < way.Conductance.Length; cell++)
        {
            double conductance = way.Conductance[cell] / scale;
            if (conductance == 0) continue;
            int column = cell % columns, row = cell / columns % layout.Rows;
            if ((uint)(column + Right) >= (uint)columns || row + Up >= layout.Rows)
                throw new ArgumentException($"The way ({Right}, {Up}) leads from column {column}, row {row} out of the grid.", nameof(way));
            int at = layout.At(column, row, cell / (columns * layout.Rows));
            Conductance.Origin[at] = conductance;
            Single.Origin[at] = (float)conductance;
        }
    }

    /// <summary>Columns to the right that the way leads [-].</summary>
    public int Right { get; }

    /// <summary>Rows up that it leads [-].</summary>
    public int Up { get; }

    /// <summary>Distance in memory that it leads [-].</summary>
    public int Step { get; }

    /// <summary>Scaled conductance from each cell.</summary>
    public Field<double> Conductance { get; }

    /// <summary>The same in single precision.</summary>
    public Field<float> Single { get; }

    /// <summary>Adds to the couplings of the finest grid what this way comes to between cells that are neighbours, diagonal ones included.</summary>
    /// <remarks>
    /// A way that jumps over cells is replaced by the two chains of n steps that lie closest to it, along the row, the column or a diagonal: since
    /// (Σ aₖ)² ≤ n Σ aₖ², each
    /// step of a chain with n times half the conductance makes an operator that is nowhere below the true one and still an M-matrix. It only serves
    /// to precondition. Derived.
    /// </remarks>
    /// <param name="level">The finest grid.</param>
    public void AddSteps(MultigridLevel level)
    {
        PaddedLayout layout = level.Layout;
        int steps = Math.Max(Math.Abs(Right), Up), signX = Math.Sign(Right);
        bool single = Math.Abs(Right) == Up || Right == 0 || Up == 0;
        int slow = Math.Min(Math.Abs(Right), Up);
        for (int line = 0; line < layout.Layers * layout.Rows; line++)
        {
            int row = line % layout.Rows, layer = line / layout.Rows;
            for (int column = 0; column < layout.Columns; column++)
            {
                float conductance = Single.Row(row, layer)[column];
                if (conductance == 0) continue;
                float share = single ? conductance * steps : conductance * steps / 2;
                Walk(false, share);
                if (!single) Walk(true, share);

                void Walk(bool late, float each)
                {
                    int x = column, y = row, sideways = 0;
                    for (int step = 1; step <= steps; step++)
                    {
                        int aim = late ? slow * step / steps : (slow * step + steps - 1) / steps;
                        bool both = aim > sideways;
                        sideways = aim;
                        int dx = both || Up < Math.Abs(Right) ? signX : 0, dy = both || Up >= Math.Abs(Right) ? 1 : 0;
                        AddStep(level, x, y, layer, dx, dy, each);
                        x += dx;
                        y += dy;
                    }
                }
            }
        }
    }

    private static void AddStep(MultigridLevel level, int x, int y, int layer, int dx, int dy, float conductance)
    {
        PaddedLayout layout = level.Layout;
        int from = layout.At(x, y, layer), to = layout.At(x + dx, y + dy, layer);
        Field<float> field = dy == 0 ? level.East : dx == 0 ? level.North : dx > 0 ? level.NorthEast! : level.NorthWest!;
        field.Origin[dy == 0 && dx < 0 ? to : from] += conductance;
        level.Rest.Origin[from] += conductance;
        level.Rest.Origin[to] += conductance;
    }
}

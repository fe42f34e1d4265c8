using InfusionSim.Numerics.Krylov;
using InfusionSim.Numerics.Multigrid;
using InfusionSim.Numerics.Stencils;

namespace InfusionSim.Numerics.Complementarity;

/// <summary>The conductances of cells, divided by their mean and laid out for passes over rows; line nodes are kept apart.</summary>
internal sealed unsafe class ScaledOperator
{
    private readonly SlantedWay[] _ways;

    /// <summary>Scales an operator.</summary>
    /// <param name="matrix">The operator; not read again.</param>
    public ScaledOperator(LatticeOperator matrix)
    {
        Scale = MeanOf(matrix);
        int reachUp = matrix.Ways.Max(static way => way.Up);
        Reach = matrix.Ways.Max(static way => Math.Max(Math.Abs(way.Right), way.Up));
        PaddedLayout layout = new(matrix.Columns, matrix.Rows, matrix.Layers, Math.Max(PaddedLayout.FewestGhostRows, reachUp));
        East = Lay(matrix.East, layout);
        North = Lay(matrix.North, layout);
        Anchor = Lay(matrix.Anchor, layout);
        Above = matrix.Layers > 1 ? Lay(matrix.Above, layout) : null;
        _ways = [.. matrix.Ways.Skip(2).Where(static way => way.Conductance.Any(static value => value > 0)).Select(way => new SlantedWay(way, layout, Scale))];
        Layout = layout;
        Rest = new(layout);
        Diagonal = layout.Layers == 1 ? Rest : new(layout);
        LinkSum = LinkSums(matrix);
    }

    /// <summary>What conductances were divided by.</summary>
    public double Scale { get; }

    /// <summary>Cells that the longest way reaches along a row or a column [-].</summary>
    public int Reach { get; }

    /// <summary>Where the cells lie.</summary>
    public PaddedLayout Layout { get; }

    /// <summary>Scaled conductance to the right neighbour.</summary>
    public Field<double> East { get; }

    /// <summary>Scaled conductance to the neighbour in the next row.</summary>
    public Field<double> North { get; }

    /// <summary>Scaled conductance to the cell in the next layer; null with one layer.</summary>
    public Field<double>? Above { get; }

    /// <summary>Scaled conductance to fixed pressures.</summary>
    public Field<double> Anchor { get; }

    /// <summary>Slanted ways.</summary>
    public SlantedWay[] Ways => _ways;

    /// <summary>Diagonal of the preconditioner without the couplings through the thickness.</summary>
    public Field<float> Rest { get; }

    /// <summary>Diagonal of the preconditioner.</summary>
    public Field<float> Diagonal { get; }

    private double[] LinkSum { get; }

    /// <summary>Net outflow of a cell, links to line nodes left out.</summary>
    /// <param name="x">Unknowns.</param>
    /// <param name="at">Where the cell lies.</param>
    public double Outflow(Field<double> x, int at)
    {
        int s = Layout.Stride;
        double* value = x.Origin + at;
        double here = value[0];
        double sum = Anchor.Origin[at] * here
            + East.Origin[at] * (here - value[1]) + East.Origin[at - 1] * (here - value[-1])
            + North.Origin[at] * (here - value[s]) + North.Origin[at - s] * (here - value[-s]);
        foreach (SlantedWay way in _ways)
            sum += way.Conductance.Origin[at] * (here - value[way.Step]) + way.Conductance.Origin[at - way.Step] * (here - value[-way.Step]);
        if (Above is null) return sum;
        int layer = at / Layout.LayerStride, next = Layout.LayerStride;
        if (layer + 1 < Layout.Layers) sum += Above.Origin[at] * (here - value[next]);
        if (layer > 0) sum += Above.Origin[at - next] * (here - value[-next]);
        return sum;
    }

    /// <summary>Makes the finest grid of the preconditioner, every cell taking part: slanted ways replaced by steps between neighbours.</summary>
    public MultigridLevel MakeFinestLevel()
    {
        MultigridLevel level = new(Layout, _ways.Length > 0, LinkSum.Length > 0);
        Narrow(East, level.East);
        Narrow(North, level.North);
        if (Above is not null) Narrow(Above, level.Above!);
        int cells = Layout.Columns * Layout.Rows * Layout.Layers;
        for (int cell = 0; cell < cells; cell++)
        {
            int at = AtOf(cell), s = Layout.Stride;
            double links = LinkSum.Length > 0 ? LinkSum[cell] : 0;
            if (level.LinkSum is not null) level.LinkSum.Origin[at] = links;
            level.Slack.Origin[at] = (float)Anchor.Origin[at];
            level.Rest.Origin[at] = (float)(Anchor.Origin[at] + links + East.Origin[at] + East.Origin[at - 1] + North.Origin[at] + North.Origin[at - s]);
        }

        foreach (SlantedWay way in _ways) way.AddSteps(level);
        for (int cell = 0; cell < cells; cell++)
        {
            int at = AtOf(cell), next = Layout.LayerStride;
            float diagonal = level.Rest.Origin[at];
            if (Above is not null) diagonal += (float)(Above.Origin[at] + (at >= next ? Above.Origin[at - next] : 0));
            Rest.Origin[at] = level.Rest.Origin[at];
            level.Diagonal.Origin[at] = Diagonal.Origin[at] = diagonal;
        }

        return level;
    }

    /// <summary>Makes the operator in single precision.</summary>
    /// <param name="finest">The finest grid.</param>
    public SingleOperator MakeSingle(MultigridLevel finest)
    {
        Field<float> anchor = new(Layout), east = finest.East, north = finest.North;
        Narrow(Anchor, anchor);
        if (_ways.Length > 0)
        {
            Narrow(East, east = new(Layout));
            Narrow(North, north = new(Layout));
        }

        return new SingleOperator(finest, east, north, anchor, _ways);
    }

    private int AtOf(int cell) => Layout.At(cell % Layout.Columns, cell / Layout.Columns % Layout.Rows, cell / (Layout.Columns * Layout.Rows));

    private Field<double> Lay(double[] values, PaddedLayout layout)
    {
        Field<double> field = new(layout);
        int cells = layout.Columns * layout.Rows * layout.Layers;
        for (int cell = 0; cell < cells; cell++)
        {
            if (!(values[cell] >= 0)) throw new ArgumentOutOfRangeException(nameof(values), values[cell], $"Cell {cell} has a conductance below 0 or not a number.");
            field.Row(cell / layout.Columns % layout.Rows, cell / (layout.Columns * layout.Rows))[cell % layout.Columns] = values[cell] / Scale;
        }

        return field;
    }

    private double[] LinkSums(LatticeOperator matrix)
    {
        if (matrix.LineNodes == 0) return [];
        double[] sums = new double[matrix.CellCount];
        foreach (NodeLink link in matrix.Links)
        {
            int cell = Math.Min(link.First, link.Second);
            if (cell < sums.Length) sums[cell] += link.Conductance / Scale;
        }

        return sums;
    }

    private static void Narrow(Field<double> source, Field<float> target)
    {
        PaddedLayout layout = source.Layout;
        for (int line = 0; line < layout.Layers * layout.Rows; line++)
        {
            double* from = source.Row(line % layout.Rows, line / layout.Rows);
            float* to = target.Row(line % layout.Rows, line / layout.Rows);
            for (int column = 0; column < layout.Columns; column++) to[column] = (float)from[column];
        }
    }

    private static double MeanOf(LatticeOperator matrix)
    {
        double total = 0;
        int coupled = 0;
        for (int cell = 0; cell < matrix.CellCount; cell++)
        {
            double conductance = 0;
            foreach (StencilWay way in matrix.Ways)
            {
                if (!(way.Conductance[cell] >= 0))
                    throw new ArgumentOutOfRangeException(nameof(matrix), $"Cell {cell} has a conductance below 0 or not a number along ({way.Right}, {way.Up}): {way.Conductance[cell]}.");
                conductance += way.Conductance[cell];
            }

            if (conductance == 0) continue;
            total += conductance;
            coupled++;
        }

        if (coupled > 0) return total / coupled;
        double anchor = matrix.Anchor.Max();
        return anchor > 0 ? anchor : 1;
    }
}

using InfusionSim.Numerics.Multigrid;

namespace InfusionSim.Numerics.Lines;

/// <summary>One number per node: per cell of the stack of grids, and per line node.</summary>
internal sealed class NodeField
{
    /// <summary>Makes a field of zeros.</summary>
    /// <param name="layout">Where the cells lie.</param>
    /// <param name="lineNodes">How many line nodes there are.</param>
    public NodeField(PaddedLayout layout, int lineNodes)
    {
        Cells = new(layout);
        Lines = new double[lineNodes];
    }

    /// <summary>The cells' numbers.</summary>
    public Field<double> Cells { get; }

    /// <summary>The line nodes' numbers.</summary>
    public double[] Lines { get; }

    /// <summary>Copies a plain array [nodes] into the field, each number times a factor.</summary>
    /// <param name="source">The array.</param>
    /// <param name="factor">The factor.</param>
    public unsafe void CopyFrom(ReadOnlySpan<double> source, double factor)
    {
        PaddedLayout layout = Cells.Layout;
        int node = 0;
        for (int line = 0; line < layout.Layers * layout.Rows; line++)
        {
            double* row = Cells.Row(line % layout.Rows, line / layout.Rows);
            for (int column = 0; column < layout.Columns; column++) row[column] = source[node++] * factor;
        }

        for (int k = 0; k < Lines.Length; k++) Lines[k] = source[node++] * factor;
    }

    /// <summary>Copies the field into a plain array [nodes], each number times a factor.</summary>
    /// <param name="target">The array.</param>
    /// <param name="factor">The factor.</param>
    public unsafe void CopyTo(Span<double> target, double factor)
    {
        PaddedLayout layout = Cells.Layout;
        int node = 0;
        for (int line = 0; line < layout.Layers * layout.Rows; line++)
        {
            double* row = Cells.Row(line % layout.Rows, line / layout.Rows);
            for (int column = 0; column < layout.Columns; column++) target[node++] = row[column] * factor;
        }

        for (int k = 0; k < Lines.Length; k++) target[node++] = Lines[k] * factor;
    }

    /// <summary>Sets every number to zero.</summary>
    public void Clear()
    {
        Cells.Clear();
        Array.Clear(Lines);
    }
}

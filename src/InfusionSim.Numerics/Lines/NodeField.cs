using InfusionSim.Numerics.Multigrid;

namespace InfusionSim.Numerics.Lines;

/// <summary>One number per node: per cell of the stack of grids, and per line node.</summary>
/// <remarks>
/// A line may conduct ten million times better than the cloth it feeds. Its pressure then differs from that of the pot in the last digits of a double only,
/// and the flow between the two would be lost to rounding: the numbers of line nodes are held as sums of two doubles (Dekker, Numer. Math. 18 (1971) 224, from
/// memory). There are few of them.
/// </remarks>
internal sealed class NodeField
{
    /// <summary>Makes a field of zeros.</summary>
    /// <param name="layout">Where the cells lie.</param>
    /// <param name="lineNodes">How many line nodes there are.</param>
    public NodeField(PaddedLayout layout, int lineNodes)
    {
        Cells = new(layout);
        Lines = new double[lineNodes];
        Fine = new double[lineNodes];
    }

    /// <summary>The cells' numbers.</summary>
    public Field<double> Cells { get; }

    /// <summary>The line nodes' numbers, to the nearest double.</summary>
    public double[] Lines { get; }

    /// <summary>What is to be added to each line node's number because a double does not hold it; 0 wherever that does not matter.</summary>
    public double[] Fine { get; }

    /// <summary>Sets the number of a line node to a double.</summary>
    /// <param name="node">The node, counted from the first line node.</param>
    /// <param name="value">The number.</param>
    public void SetLine(int node, double value) => (Lines[node], Fine[node]) = (value, 0);

    /// <summary>Sets the number of a line node to a product and a sum without rounding either.</summary>
    /// <param name="node">The node, counted from the first line node.</param>
    /// <param name="first">One factor.</param>
    /// <param name="second">The other.</param>
    /// <param name="more">What is added to the product.</param>
    public void SetLine(int node, double first, double second, double more)
    {
        double product = first * second;
        (Lines[node], Fine[node]) = (product, Math.FusedMultiplyAdd(first, second, -product));
        AddToLine(node, more);
    }

    /// <summary>Adds to the number of a line node.</summary>
    /// <param name="node">The node, counted from the first line node.</param>
    /// <param name="change">What is added.</param>
    public void AddToLine(int node, double change)
    {
        double before = Lines[node], sum = before + change, part = sum - before;
        double rest = Fine[node] + (before - (sum - part) + (change - part));
        Lines[node] = sum + rest;
        Fine[node] = rest - (Lines[node] - sum);
    }

    /// <summary>Sets every number to that of another field times a factor.</summary>
    /// <param name="source">The other field, of the same layout.</param>
    /// <param name="factor">The factor.</param>
    public unsafe void SetTo(NodeField source, double factor)
    {
        PaddedLayout layout = Cells.Layout;
        for (int line = 0; line < layout.Layers * layout.Rows; line++)
        {
            double* row = Cells.Row(line % layout.Rows, line / layout.Rows), other = source.Cells.Row(line % layout.Rows, line / layout.Rows);
            for (int column = 0; column < layout.Columns; column++) row[column] = factor * other[column];
        }

        for (int k = 0; k < Lines.Length; k++) SetLine(k, factor, source.Lines[k], 0);
    }

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

        for (int k = 0; k < Lines.Length; k++) SetLine(k, source[node++] * factor);
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
        Array.Clear(Fine);
    }
}

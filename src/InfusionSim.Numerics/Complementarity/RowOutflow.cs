using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using InfusionSim.Numerics.Multigrid;
using static System.Runtime.Intrinsics.Vector512;

namespace InfusionSim.Numerics.Complementarity;

/// <summary>Net outflow of the cells of one row in double precision, links to line nodes left out.</summary>
internal readonly unsafe ref struct RowOutflow
{
    private readonly double* _x, _east, _north, _south, _anchor, _above, _below;
    private readonly int _stride, _row, _layer;
    private readonly nint _layerStride;
    private readonly IReadOnlyList<SlantedWay> _ways;

    /// <summary>Collects the addresses.</summary>
    /// <param name="source">The operator.</param>
    /// <param name="row">Row.</param>
    /// <param name="layer">Layer.</param>
    /// <param name="x">Unknowns.</param>
    public RowOutflow(ScaledOperator source, int row, int layer, Field<double> x)
    {
        _x = x.Row(row, layer);
        _east = source.East.Row(row, layer);
        _north = source.North.Row(row, layer);
        _south = source.North.Row(row - 1, layer);
        _anchor = source.Anchor.Row(row, layer);
        _stride = source.Layout.Stride;
        _layerStride = source.Layout.LayerStride;
        _row = row;
        _layer = layer;
        _ways = source.Ways;
        if (source.Above is null) return;
        if (layer + 1 < source.Layout.Layers) _above = source.Above.Row(row, layer);
        if (layer > 0) _below = source.Above.Row(row, layer - 1);
    }

    /// <summary>Values of eight cells.</summary>
    /// <param name="i">Column of the first.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector512<double> Here(int i) => Load(_x + i);

    /// <summary>Net outflow of eight cells.</summary>
    /// <param name="i">Column of the first.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector512<double> At(int i)
    {
        double* x = _x + i;
        Vector512<double> here = Load(x);
        Vector512<double> outflow = FusedMultiplyAdd(Load(_east + i), here - Load(x + 1), Load(_anchor + i) * here);
        Vector512<double> other = Load(_east + i - 1) * (here - Load(x - 1));
        outflow = FusedMultiplyAdd(Load(_north + i), here - Load(x + _stride), outflow);
        other = FusedMultiplyAdd(Load(_south + i), here - Load(x - _stride), other);
        if (_above != null) outflow = FusedMultiplyAdd(Load(_above + i), here - Load(x + _layerStride), outflow);
        if (_below != null) other = FusedMultiplyAdd(Load(_below + i), here - Load(x - _layerStride), other);
        for (int k = 0; k < _ways.Count; k++)
        {
            SlantedWay way = _ways[k];
            double* ahead = way.Conductance.Row(_row, _layer) + i;
            outflow = FusedMultiplyAdd(Load(ahead), here - Load(x + way.Step), outflow);
            other = FusedMultiplyAdd(Load(ahead - way.Step), here - Load(x - way.Step), other);
        }

        return outflow + other;
    }
}

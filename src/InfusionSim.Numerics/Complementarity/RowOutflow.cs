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
    private readonly SlantedWay[] _ways;

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

    /// <summary>Whether cells conduct to others than their four neighbours in the layer.</summary>
    public bool ReachesFurther => _ways.Length > 0 || _above != null || _below != null;

    /// <summary>Addresses of the row: unknowns, conductances to the right, to the next row, from the row before, to fixed pressures; and the distance between rows.</summary>
    /// <remarks>Held in locals by the passes over a row, which keeps them in registers.</remarks>
    public void Addresses(out double* x, out double* east, out double* north, out double* south, out double* anchor, out int stride)
    {
        x = _x;
        east = _east;
        north = _north;
        south = _south;
        anchor = _anchor;
        stride = _stride;
    }

    /// <summary>Net outflow of eight cells to fixed pressures and their four neighbours in the layer.</summary>
    /// <param name="x">Address of the first cell's value.</param>
    /// <param name="east">Of its conductance to the right.</param>
    /// <param name="north">Of its conductance to the next row.</param>
    /// <param name="south">Of the conductance from the row before.</param>
    /// <param name="anchor">Of its conductance to fixed pressures.</param>
    /// <param name="stride">Distance between rows.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector512<double> ToNeighbours(double* x, double* east, double* north, double* south, double* anchor, int stride)
    {
        Vector512<double> here = Load(x);
        Vector512<double> outflow = FusedMultiplyAdd(Load(east), here - Load(x + 1), Load(anchor) * here);
        Vector512<double> other = Load(east - 1) * (here - Load(x - 1));
        outflow = FusedMultiplyAdd(Load(north), here - Load(x + stride), outflow);
        return outflow + FusedMultiplyAdd(Load(south), here - Load(x - stride), other);
    }

    /// <summary>Net outflow of eight cells along slanted ways and to the layers above and below.</summary>
    /// <param name="i">Column of the first.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector512<double> Further(int i)
    {
        double* x = _x + i;
        Vector512<double> here = Load(x), outflow = Vector512<double>.Zero, other = Vector512<double>.Zero;
        if (_above != null) outflow = Load(_above + i) * (here - Load(x + _layerStride));
        if (_below != null) other = Load(_below + i) * (here - Load(x - _layerStride));
        foreach (SlantedWay way in _ways)
        {
            double* ahead = way.Conductance.Row(_row, _layer) + i;
            outflow = FusedMultiplyAdd(Load(ahead), here - Load(x + way.Step), outflow);
            other = FusedMultiplyAdd(Load(ahead - way.Step), here - Load(x - way.Step), other);
        }

        return outflow + other;
    }
}

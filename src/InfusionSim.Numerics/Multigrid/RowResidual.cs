using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using static System.Runtime.Intrinsics.Vector512;

namespace InfusionSim.Numerics.Multigrid;

/// <summary>What the cells of one row are not balanced by.</summary>
internal readonly unsafe ref struct RowResidual
{
    private readonly RowCouplings _couplings;
    private readonly int _stride;
    private readonly nint _layerStride;
    private readonly bool _hasBelow, _hasAbove;
    private readonly float* _x, _load, _diagonal, _rest, _inverse, _above;

    /// <summary>Collects the addresses.</summary>
    /// <param name="level">Grid.</param>
    /// <param name="row">Row.</param>
    /// <param name="layer">Layer.</param>
    public RowResidual(MultigridLevel level, int row, int layer)
    {
        _couplings = new(level, row, layer);
        _stride = level.Layout.Stride;
        _layerStride = level.Layout.LayerStride;
        _hasBelow = layer > 0;
        _hasAbove = layer + 1 < level.Layout.Layers;
        _x = level.Value.Row(row, layer);
        _load = level.Load.Row(row, layer);
        _diagonal = level.Diagonal.Row(row, layer);
        _rest = level.Rest.Row(row, layer);
        _inverse = level.InversePivot.Row(row, layer);
        _above = level.Above is null ? null : level.Above.Row(row, layer);
    }

    /// <summary>Residual of sixteen cells of a grid with one layer; 0 in cells that take no part.</summary>
    /// <param name="i">Column of the first.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector512<float> InOneLayer(int i)
    {
        // Written so that a cell that takes no part, whose diagonal is 0, leaves no residual.
        float* x = _x + i;
        Vector512<float> relaxed = _couplings.Inflow(x, i, _stride, Load(x - 1), Load(x + 1), Load(_load + i)) * Load(_inverse + i);
        return (relaxed - Load(x)) * Load(_diagonal + i);
    }

    /// <summary>Residual of sixteen cells of one layer among several; 0 in cells that take no part.</summary>
    /// <remarks>Through the thickness as conductance times difference: a strong coupling there would swallow the rest in single precision.</remarks>
    /// <param name="i">Column of the first.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector512<float> AmidLayers(int i)
    {
        float* x = _x + i;
        Vector512<float> here = Load(x);
        Vector512<float> sum = _couplings.Inflow(x, i, _stride, Load(x - 1), Load(x + 1), Load(_load + i)) - Load(_rest + i) * here;
        if (_hasAbove) sum = FusedMultiplyAdd(Load(_above + i), Load(x + _layerStride) - here, sum);
        if (_hasBelow) sum = FusedMultiplyAdd(Load(_above + i - _layerStride), Load(x - _layerStride) - here, sum);
        return sum & GreaterThan(Load(_diagonal + i), Vector512<float>.Zero);
    }
}

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
    private readonly float* _x, _load, _diagonal, _slack, _above, _below;

    /// <summary>Collects the addresses.</summary>
    /// <param name="level">Grid.</param>
    /// <param name="row">Row.</param>
    /// <param name="layer">Layer.</param>
    public RowResidual(MultigridLevel level, int row, int layer)
    {
        _couplings = new(level, row, layer);
        _stride = level.Layout.Stride;
        _layerStride = level.Layout.LayerStride;
        _x = level.Value.Row(row, layer);
        _load = level.Load.Row(row, layer);
        _diagonal = level.Diagonal.Row(row, layer);
        _slack = level.Slack.Row(row, layer);
        if (level.Above is null) return;
        if (layer + 1 < level.Layout.Layers) _above = level.Above.Row(row, layer);
        if (layer > 0) _below = level.Above.Row(row, layer - 1);
    }

    /// <summary>Residual of sixteen cells; 0 in cells that take no part.</summary>
    /// <param name="i">Column of the first.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector512<float> At(int i)
    {
        float* x = _x + i;
        Vector512<float> here = Load(x);
        Vector512<float> sum = _couplings.NetInflow(x, i, _stride, here, Load(_load + i) - Load(_slack + i) * here);
        if (_above != null) sum = FusedMultiplyAdd(Load(_above + i), Load(x + _layerStride) - here, sum);
        if (_below != null) sum = FusedMultiplyAdd(Load(_below + i), Load(x - _layerStride) - here, sum);
        return sum & GreaterThan(Load(_diagonal + i), Vector512<float>.Zero);
    }
}

using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using static System.Runtime.Intrinsics.Vector512;

namespace InfusionSim.Numerics.Multigrid;

/// <summary>Addresses of the couplings that one row of a grid needs.</summary>
internal readonly unsafe ref struct RowCouplings
{
    private readonly float* _east, _north, _south, _northEast, _southWest, _northWest, _southEast;

    /// <summary>Collects the addresses.</summary>
    /// <param name="level">Grid.</param>
    /// <param name="row">Row.</param>
    /// <param name="layer">Layer.</param>
    public RowCouplings(MultigridLevel level, int row, int layer = 0)
    {
        _east = level.East.Row(row, layer);
        _north = level.North.Row(row, layer);
        _south = level.North.Row(row - 1, layer);
        if (level.NorthEast is null) return;
        _northEast = level.NorthEast.Row(row, layer);
        _southWest = level.NorthEast.Row(row - 1, layer) - 1;
        _northWest = level.NorthWest!.Row(row, layer);
        _southEast = level.NorthWest.Row(row - 1, layer) + 1;
    }

    /// <summary>Sum of coupling times neighbour value over all neighbours of sixteen cells, added to a start value.</summary>
    /// <param name="x">Address of the first cell's value.</param>
    /// <param name="i">Its column.</param>
    /// <param name="stride">Distance to the row above.</param>
    /// <param name="left">Values of the left neighbours.</param>
    /// <param name="right">Values of the right neighbours.</param>
    /// <param name="start">Start value.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector512<float> Inflow(float* x, int i, int stride, Vector512<float> left, Vector512<float> right, Vector512<float> start)
    {
        Vector512<float> sum = FusedMultiplyAdd(Load(_east + i), right, start);
        Vector512<float> other = Load(_east + i - 1) * left;
        sum = FusedMultiplyAdd(Load(_north + i), Load(x + stride), sum);
        other = FusedMultiplyAdd(Load(_south + i), Load(x - stride), other);
        if (_northEast != null)
        {
            sum = FusedMultiplyAdd(Load(_northEast + i), Load(x + stride + 1), sum);
            other = FusedMultiplyAdd(Load(_southWest + i), Load(x - stride - 1), other);
            sum = FusedMultiplyAdd(Load(_northWest + i), Load(x + stride - 1), sum);
            other = FusedMultiplyAdd(Load(_southEast + i), Load(x - stride + 1), other);
        }

        return sum + other;
    }

    /// <summary>Sum of coupling times value over the two lower diagonal neighbours of sixteen cells, added to a start value: all that a first sweep
    /// has set beside a red cell.</summary>
    /// <param name="x">Address of the first cell's value.</param>
    /// <param name="i">Its column.</param>
    /// <param name="stride">Distance to the row above.</param>
    /// <param name="start">Start value.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector512<float> InflowFromBelowDiagonally(float* x, int i, int stride, Vector512<float> start)
    {
        if (_northEast == null) return start;
        Vector512<float> sum = FusedMultiplyAdd(Load(_southWest + i), Load(x - stride - 1), start);
        return FusedMultiplyAdd(Load(_southEast + i), Load(x - stride + 1), sum);
    }
}

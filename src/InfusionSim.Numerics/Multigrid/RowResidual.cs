using System.Runtime.Intrinsics;
using static System.Runtime.Intrinsics.Vector512;

namespace InfusionSim.Numerics.Multigrid;

/// <summary>What the cells of a row are not balanced by.</summary>
internal static unsafe class RowResidual
{
    /// <summary>Adds the residual of a row, weighted, to two rows; cells that take no part leave none.</summary>
    /// <remarks>Flows are computed as coupling times difference: of a value times the sum of large couplings single precision would leave a part that is not there.</remarks>
    /// <param name="level">Grid.</param>
    /// <param name="row">Row.</param>
    /// <param name="layer">Layer.</param>
    /// <param name="start">First column, a whole vector.</param>
    /// <param name="end">One past the last column.</param>
    /// <param name="leftWeight">Weight for the first row.</param>
    /// <param name="rightWeight">Weight for the second row.</param>
    /// <param name="left">First row.</param>
    /// <param name="right">Second row.</param>
    public static void AddWeighted(
        MultigridLevel level, int row, int layer, int start, int end, Field<float> leftWeight, Field<float> rightWeight, float* left, float* right)
    {
        int stride = level.Layout.Stride;
        nint layerStride = level.Layout.LayerStride;
        float* value = level.Value.Row(row, layer), load = level.Load.Row(row, layer), diagonal = level.Diagonal.Row(row, layer), slack = level.Slack.Row(row, layer);
        float* east = level.East.Row(row, layer), north = level.North.Row(row, layer), south = level.North.Row(row - 1, layer);
        float* northEast = null, southWest = null, northWest = null, southEast = null;
        if (level.NorthEast is not null)
        {
            northEast = level.NorthEast.Row(row, layer);
            southWest = level.NorthEast.Row(row - 1, layer) - 1;
            northWest = level.NorthWest!.Row(row, layer);
            southEast = level.NorthWest.Row(row - 1, layer) + 1;
        }

        float* above = level.Above is null || layer + 1 == level.Layout.Layers ? null : level.Above.Row(row, layer);
        float* below = level.Above is null || layer == 0 ? null : level.Above.Row(row, layer - 1);
        float* toLeft = leftWeight.Row(row, layer), toRight = rightWeight.Row(row, layer);
        for (int i = start; i < end; i += PaddedLayout.Lanes)
        {
            float* x = value + i;
            Vector512<float> here = Load(x);
            Vector512<float> sum = FusedMultiplyAdd(Load(east + i), Load(x + 1) - here, Load(load + i) - Load(slack + i) * here);
            Vector512<float> other = Load(east + i - 1) * (Load(x - 1) - here);
            sum = FusedMultiplyAdd(Load(north + i), Load(x + stride) - here, sum);
            other = FusedMultiplyAdd(Load(south + i), Load(x - stride) - here, other);
            if (northEast != null)
            {
                sum = FusedMultiplyAdd(Load(northEast + i), Load(x + stride + 1) - here, sum);
                other = FusedMultiplyAdd(Load(southWest + i), Load(x - stride - 1) - here, other);
                sum = FusedMultiplyAdd(Load(northWest + i), Load(x + stride - 1) - here, sum);
                other = FusedMultiplyAdd(Load(southEast + i), Load(x - stride + 1) - here, other);
            }

            if (above != null) sum = FusedMultiplyAdd(Load(above + i), Load(x + layerStride) - here, sum);
            if (below != null) other = FusedMultiplyAdd(Load(below + i), Load(x - layerStride) - here, other);
            Vector512<float> residual = (sum + other) & GreaterThan(Load(diagonal + i), Vector512<float>.Zero);
            FusedMultiplyAdd(residual, Load(toLeft + i), Load(left + i)).Store(left + i);
            FusedMultiplyAdd(residual, Load(toRight + i), Load(right + i)).Store(right + i);
        }
    }
}

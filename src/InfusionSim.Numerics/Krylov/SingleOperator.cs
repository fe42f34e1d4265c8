using System.Runtime.Intrinsics;
using InfusionSim.Numerics.Multigrid;
using static System.Runtime.Intrinsics.Vector512;

namespace InfusionSim.Numerics.Krylov;

/// <summary>The operator of the wet cells in single precision, line nodes held at 0.</summary>
internal sealed unsafe class SingleOperator
{
    private readonly MultigridLevel _finest;
    private readonly Field<float> _east, _north, _anchor;
    private readonly Field<float>? _above;
    private readonly SlantedWay[] _ways;

    /// <summary>Makes the operator.</summary>
    /// <param name="finest">Finest grid: which cells are wet.</param>
    /// <param name="east">Conductance to the right neighbour.</param>
    /// <param name="north">Conductance to the neighbour in the next row.</param>
    /// <param name="anchor">Conductance to fixed pressures.</param>
    /// <param name="ways">Slanted ways.</param>
    public SingleOperator(MultigridLevel finest, Field<float> east, Field<float> north, Field<float> anchor, SlantedWay[] ways)
    {
        _finest = finest;
        _east = east;
        _north = north;
        _anchor = anchor;
        _above = finest.Above;
        _ways = ways;
    }

    /// <summary>Measures the step along the finest grid's Value that balances its Load best.</summary>
    /// <returns>Value times Load, and Value times the image of Value: their ratio is the length of the step.</returns>
    public (double Gain, double Curvature) StepAlongValue()
    {
        double gain = 0, curvature = 0;
        for (int row = 0; row < _finest.Layout.Rows; row++)
        {
            for (int layer = 0; layer < _finest.Layout.Layers; layer++)
            {
                (float rowGain, float rowCurvature) = StepAlongRow(row, layer);
                gain += rowGain;
                curvature += rowCurvature;
            }
        }

        return (gain, curvature);
    }

    private (float Gain, float Curvature) StepAlongRow(int row, int layer)
    {
        int stride = _finest.Layout.Stride, end = _finest.Active.End(row);
        nint layerStride = _finest.Layout.LayerStride;
        float* p = _finest.Value.Row(row, layer), load = _finest.Load.Row(row, layer), diagonal = _finest.Diagonal.Row(row, layer), anchor = _anchor.Row(row, layer);
        float* east = _east.Row(row, layer), north = _north.Row(row, layer), south = _north.Row(row - 1, layer);
        float* above = _above is null || layer + 1 == _finest.Layout.Layers ? null : _above.Row(row, layer);
        float* below = _above is null || layer == 0 ? null : _above.Row(row, layer - 1);
        Vector512<float> sum = Vector512<float>.Zero, gain = Vector512<float>.Zero;
        for (int i = _finest.Active.Start(row); i < end; i += PaddedLayout.Lanes)
        {
            Vector512<float> here = Load(p + i);
            Vector512<float> flow = FusedMultiplyAdd(Load(east + i), here - Load(p + i + 1), Load(anchor + i) * here);
            Vector512<float> other = Load(east + i - 1) * (here - Load(p + i - 1));
            flow = FusedMultiplyAdd(Load(north + i), here - Load(p + i + stride), flow);
            other = FusedMultiplyAdd(Load(south + i), here - Load(p + i - stride), other);
            if (above != null) flow = FusedMultiplyAdd(Load(above + i), here - Load(p + i + layerStride), flow);
            if (below != null) other = FusedMultiplyAdd(Load(below + i), here - Load(p + i - layerStride), other);
            foreach (SlantedWay way in _ways)
            {
                float* ahead = way.Single.Row(row, layer) + i;
                flow = FusedMultiplyAdd(Load(ahead), here - Load(p + i + way.Step), flow);
                other = FusedMultiplyAdd(Load(ahead - way.Step), here - Load(p + i - way.Step), other);
            }

            Vector512<float> takesPart = GreaterThan(Load(diagonal + i), Vector512<float>.Zero);
            sum = FusedMultiplyAdd(here, (flow + other) & takesPart, sum);
            gain = FusedMultiplyAdd(here, Load(load + i), gain);
        }

        return (Sum(gain), Sum(sum));
    }
}

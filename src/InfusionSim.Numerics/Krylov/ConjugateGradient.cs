using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using InfusionSim.Numerics.Complementarity;
using InfusionSim.Numerics.Lines;
using InfusionSim.Numerics.Multigrid;
using static System.Runtime.Intrinsics.Vector512;

namespace InfusionSim.Numerics.Krylov;

/// <summary>Conjugate gradients on the wet nodes in double precision, preconditioned by a V-cycle in single precision.</summary>
/// <remarks>
/// The operator is applied as a sum of conductance times difference: a diagonal times a value less its neighbours' would lose a small flow
/// through a large conductance to rounding. Source: Hestenes and Stiefel, J. Res. NBS 49 (1952) 409 (from memory).
/// </remarks>
internal sealed unsafe class ConjugateGradient
{
    // Rounding allows no more when the preconditioned residual has not halved for this many cycles.
    private const int StallLimit = 25;

    private readonly MultigridHierarchy _hierarchy;
    private readonly MultigridLevel _finest;
    private readonly ScaledOperator _operator;
    private readonly LineLinks _lines;
    private readonly NodeField _direction;
    private readonly NodeField _image;

    /// <summary>Makes a solver on the finest grid of a hierarchy.</summary>
    /// <param name="hierarchy">Grids.</param>
    /// <param name="scaled">The operator of the cells.</param>
    /// <param name="lines">The operator of the line nodes.</param>
    public ConjugateGradient(MultigridHierarchy hierarchy, ScaledOperator scaled, LineLinks lines)
    {
        _hierarchy = hierarchy;
        _finest = hierarchy.Levels[0];
        _operator = scaled;
        _lines = lines;
        _direction = new(_finest.Layout, lines.Count);
        _image = new(_finest.Layout, lines.Count);
        Residual = new(_finest.Layout, lines.Count);
    }

    /// <summary>What is not balanced: filled before <see cref="Solve"/>, brought up to date by it; 0 in nodes that take no part.</summary>
    public NodeField Residual { get; }

    /// <summary>Corrects unknowns until the sum of the absolute residual is small.</summary>
    /// <param name="x">Unknowns that the residual belongs to.</param>
    /// <param name="target">Sum of the absolute residual to reach.</param>
    /// <param name="limit">Most cycles.</param>
    /// <param name="cancellation">Stops the iteration between cycles.</param>
    /// <returns>Cycles used.</returns>
    public int Solve(NodeField x, double target, int limit, CancellationToken cancellation)
    {
        double before = 0, least = double.PositiveInfinity;
        int idle = 0;
        for (int cycle = 0; ; cycle++)
        {
            cancellation.ThrowIfCancellationRequested();
            if (NarrowResidual() <= target || cycle == limit || idle == StallLimit) return cycle;
            _hierarchy.Cycle();
            double now = ResidualTimesValue();

            // A negative gain: links a thousand times as strong as all beside them have made a coarse grid indefinite by rounding.
            if (now < 0 && _hierarchy.HoldLinesBetween())
            {
                cycle = -1;
                continue;
            }

            // Not a number or not positive: nothing is left in single precision.
            if (!(now > 0)) return cycle + 1;
            (least, idle) = now < least / 4 ? (now, 0) : (least, idle + 1);
            double curvature = TurnAndApply(cycle == 0 ? 0 : now / before);
            if (!(curvature > 0)) return cycle + 1;
            Advance(x, now / curvature);
            before = now;
        }
    }

    private double NarrowResidual()
    {
        Vector512<double> sum = Vector512<double>.Zero;
        for (int layer = 0; layer < _finest.Layout.Layers; layer++)
        {
            for (int row = 0; row < _finest.Layout.Rows; row++)
            {
                double* r = Residual.Cells.Row(row, layer);
                float* load = _finest.Load.Row(row, layer);
                int end = _finest.Active.End(row);
                for (int i = _finest.Active.Start(row); i < end; i += Vector512<double>.Count)
                {
                    Vector512<double> here = Load(r + i);
                    sum += Abs(here);
                    Vector256.Narrow(here.GetLower(), here.GetUpper()).Store(load + i);
                }
            }
        }

        double total = Sum(sum);
        if (_hierarchy.FinestLines is not LevelLines lines) return total;
        Residual.Lines.CopyTo(lines.Load, 0);
        foreach (double residual in Residual.Lines) total += Math.Abs(residual);
        return total;
    }

    private double ResidualTimesValue()
    {
        Vector512<double> sum = Vector512<double>.Zero;
        for (int layer = 0; layer < _finest.Layout.Layers; layer++)
        {
            for (int row = 0; row < _finest.Layout.Rows; row++)
            {
                double* r = Residual.Cells.Row(row, layer);
                float* z = _finest.Value.Row(row, layer);
                int end = _finest.Active.End(row);
                for (int i = _finest.Active.Start(row); i < end; i += Vector512<double>.Count) sum = FusedMultiplyAdd(Load(r + i), Widen(z + i), sum);
            }
        }

        double total = Sum(sum);
        if (_hierarchy.FinestLines is LevelLines lines)
            for (int node = 0; node < lines.Value.Length; node++) total += Residual.Lines[node] * lines.Value[node];
        return total;
    }

    /// <summary>Turns the direction and applies the operator to it, each row as soon as the rows it reaches have turned.</summary>
    private double TurnAndApply(double keep)
    {
        int rows = _finest.Layout.Rows, layers = _finest.Layout.Layers, reach = Math.Max(1, _operator.Reach);
        double[] turned = _direction.Lines;
        if (_hierarchy.FinestLines is LevelLines lines)
            for (int node = 0; node < turned.Length; node++) turned[node] = keep * turned[node] + lines.Value[node];
        double total = 0;
        for (int row = 0; row < rows + reach; row++)
        {
            for (int layer = 0; layer < layers && row < rows; layer++) TurnRow(row, layer, keep);
            for (int layer = 0; layer < layers && row >= reach; layer++) total += ApplyRow(row - reach, layer);
        }

        return total + _lines.Apply(_direction, _image, _finest.Diagonal);
    }

    private void TurnRow(int row, int layer, double keep)
    {
        Vector512<double> factor = Create(keep);
        double* p = _direction.Cells.Row(row, layer);
        float* z = _finest.Value.Row(row, layer);
        int end = _finest.Active.End(row);
        if (keep == 0)
        {
            for (int i = _finest.Active.Start(row); i < end; i += Vector512<double>.Count) Widen(z + i).Store(p + i);
            return;
        }

        for (int i = _finest.Active.Start(row); i < end; i += Vector512<double>.Count) FusedMultiplyAdd(factor, Load(p + i), Widen(z + i)).Store(p + i);
    }

    private double ApplyRow(int row, int layer)
    {
        double* q = _image.Cells.Row(row, layer);
        float* diagonal = _finest.Diagonal.Row(row, layer);
        RowOutflow outflow = new(_operator, row, layer, _direction.Cells);
        outflow.Addresses(out double* p, out double* east, out double* north, out double* south, out double* anchor, out int stride);
        bool further = outflow.ReachesFurther;
        Vector512<double> sum = Vector512<double>.Zero;
        int end = _finest.Active.End(row);
        for (int i = _finest.Active.Start(row); i < end; i += Vector512<double>.Count)
        {
            Vector512<double> image = RowOutflow.ToNeighbours(p + i, east + i, north + i, south + i, anchor + i, stride);
            if (further) image += outflow.Further(i);
            image &= GreaterThan(Widen(diagonal + i), Vector512<double>.Zero);
            image.Store(q + i);
            sum = FusedMultiplyAdd(Load(p + i), image, sum);
        }

        return Sum(sum);
    }

    private void Advance(NodeField unknowns, double step)
    {
        Vector512<double> length = Create(step);
        for (int layer = 0; layer < _finest.Layout.Layers; layer++)
        {
            for (int row = 0; row < _finest.Layout.Rows; row++)
            {
                double* p = _direction.Cells.Row(row, layer), q = _image.Cells.Row(row, layer), r = Residual.Cells.Row(row, layer), x = unknowns.Cells.Row(row, layer);
                int end = _finest.Active.End(row);
                for (int i = _finest.Active.Start(row); i < end; i += Vector512<double>.Count)
                {
                    FusedMultiplyAdd(length, Load(p + i), Load(x + i)).Store(x + i);
                    (Load(r + i) - length * Load(q + i)).Store(r + i);
                }
            }
        }

        for (int node = 0; node < unknowns.Lines.Length; node++)
        {
            unknowns.AddToLine(node, step * _direction.Lines[node]);
            Residual.Lines[node] -= step * _image.Lines[node];
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> Widen(float* values) => WidenLower(Create(Vector256.Load(values), Vector256<float>.Zero));
}

using System.Runtime.Intrinsics;
using InfusionSim.Numerics.Multigrid;
using static System.Runtime.Intrinsics.Vector512;

namespace InfusionSim.Numerics.Krylov;

/// <summary>Conjugate gradients on the wet cells in single precision, preconditioned by a V-cycle: the inner part of an iterative refinement.</summary>
/// <remarks>
/// The residual lives in the finest grid's Load, the preconditioned residual in its Value. The operator is applied as
/// a sum of conductance times difference: a diagonal times a value less its neighbours' would lose a small flow
/// through a large conductance to rounding. Source: Hestenes and Stiefel, J. Res. NBS 49 (1952) 409 (from memory).
/// </remarks>
internal sealed unsafe class ConjugateGradient
{
    private readonly MultigridHierarchy _hierarchy;
    private readonly MultigridLevel _finest;
    private readonly Field<float> _anchor;
    private readonly Field<float> _direction;
    private readonly Field<float> _image;

    /// <summary>Makes a solver on the finest grid of a hierarchy.</summary>
    /// <param name="hierarchy">Grids.</param>
    /// <param name="anchor">Conductance of each cell to a fixed pressure, in the units of the finest couplings.</param>
    public ConjugateGradient(MultigridHierarchy hierarchy, Field<float> anchor)
    {
        _hierarchy = hierarchy;
        _finest = hierarchy.Levels[0];
        _anchor = anchor;
        _direction = new(_finest.Layout);
        _image = new(_finest.Layout);
        Correction = new(_finest.Layout);
    }

    /// <summary>Solution of the last call; 0 in cells that take no part.</summary>
    public Field<float> Correction { get; }

    /// <summary>Solves for the finest Load, which is overwritten by what stays unbalanced.</summary>
    /// <param name="reduction">Wanted ratio of the residual's length after to before.</param>
    /// <param name="limit">Most cycles.</param>
    /// <param name="cancellation">Stops the iteration between cycles.</param>
    /// <returns>Cycles used.</returns>
    public int Solve(double reduction, int limit, CancellationToken cancellation)
    {
        double preconditioned = 0, first = 0;
        for (int cycle = 1; ; cycle++)
        {
            cancellation.ThrowIfCancellationRequested();
            _hierarchy.Cycle();
            double now = LoadTimesValue();
            if (cycle == 1) first = now;

            // Not a number or not positive: the residual is zero in single precision.
            if (!(now > 0))
            {
                if (cycle == 1) ClearCorrection();
                return cycle;
            }

            double curvature = TurnAndApply(cycle == 1 ? 0 : (float)(now / preconditioned), cycle == 1);
            if (!(curvature > 0)) return cycle;
            Advance((float)(now / curvature), cycle == 1);
            preconditioned = now;

            // The preconditioned norm of the residual before this step; a step gains about a digit.
            if (cycle >= limit || now <= first * reduction * reduction) return cycle;
        }
    }

    private double LoadTimesValue()
    {
        double total = 0;
        for (int row = 0; row < _finest.Layout.Rows; row++)
        {
            float* r = _finest.Load.Row(row), z = _finest.Value.Row(row);
            Vector512<float> sum = Vector512<float>.Zero;
            for (int i = _finest.Active.Start(row); i < _finest.Active.End(row); i += PaddedLayout.Lanes)
                sum = FusedMultiplyAdd(Load(r + i), Load(z + i), sum);
            total += Sum(sum);
        }

        return total;
    }

    /// <summary>Turns the direction and applies the operator to it, each row as soon as the row above has turned.</summary>
    private double TurnAndApply(float keep, bool first)
    {
        double total = 0;
        int rows = _finest.Layout.Rows;
        for (int row = 0; row <= rows; row++)
        {
            if (row < rows) TurnRow(row, keep, first);
            if (row > 0) total += ApplyRow(row - 1);
        }

        return total;
    }

    private void TurnRow(int row, float keep, bool first)
    {
        Vector512<float> factor = Create(keep);
        float* p = _direction.Row(row), z = _finest.Value.Row(row);
        int end = _finest.Active.End(row);
        for (int i = _finest.Active.Start(row); i < end; i += PaddedLayout.Lanes)
            (first ? Load(z + i) : FusedMultiplyAdd(factor, Load(p + i), Load(z + i))).Store(p + i);
    }

    private double ApplyRow(int row)
    {
        int stride = _finest.Layout.Stride, end = _finest.Active.End(row);
        float* p = _direction.Row(row), q = _image.Row(row), diagonal = _finest.Diagonal.Row(row), anchor = _anchor.Row(row);
        float* east = _finest.East.Row(row), north = _finest.North.Row(row), south = _finest.North.Row(row - 1);
        Vector512<float> sum = Vector512<float>.Zero;
        for (int i = _finest.Active.Start(row); i < end; i += PaddedLayout.Lanes)
        {
            Vector512<float> here = Load(p + i);
            Vector512<float> flow = FusedMultiplyAdd(Load(east + i), here - Load(p + i + 1), Load(anchor + i) * here);
            Vector512<float> other = Load(east + i - 1) * (here - Load(p + i - 1));
            flow = FusedMultiplyAdd(Load(north + i), here - Load(p + i + stride), flow);
            other = FusedMultiplyAdd(Load(south + i), here - Load(p + i - stride), other);
            Vector512<float> takesPart = GreaterThan(Load(diagonal + i), Vector512<float>.Zero);
            Vector512<float> image = (flow + other) & takesPart;
            image.Store(q + i);
            sum = FusedMultiplyAdd(here, image, sum);
        }

        return Sum(sum);
    }

    private void Advance(float step, bool first)
    {
        Vector512<float> length = Create(step);
        for (int row = 0; row < _finest.Layout.Rows; row++)
        {
            float* p = _direction.Row(row), q = _image.Row(row), r = _finest.Load.Row(row), x = Correction.Row(row);
            int end = _finest.Active.End(row);
            for (int i = _finest.Active.Start(row); i < end; i += PaddedLayout.Lanes)
            {
                (first ? length * Load(p + i) : FusedMultiplyAdd(length, Load(p + i), Load(x + i))).Store(x + i);
                (Load(r + i) - length * Load(q + i)).Store(r + i);
            }
        }
    }

    private void ClearCorrection()
    {
        for (int row = 0; row < _finest.Layout.Rows; row++)
        {
            int start = _finest.Active.Start(row), count = _finest.Active.End(row) - start;
            if (count > 0) new Span<float>(Correction.Row(row) + start, count).Clear();
        }
    }
}

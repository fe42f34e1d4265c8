using System.Runtime.Intrinsics;
using InfusionSim.Numerics.Lines;
using InfusionSim.Numerics.Multigrid;
using static System.Runtime.Intrinsics.Vector512;

namespace InfusionSim.Numerics.Krylov;

/// <summary>Conjugate gradients on the wet nodes in single precision, preconditioned by a V-cycle: the inner part of an iterative refinement.</summary>
/// <remarks>
/// The residual lives in the finest grid's Load, the preconditioned residual in its Value; those of the line nodes, in double precision, in the hierarchy's view
/// of them. The operator is applied as a sum of conductance times difference: a diagonal times a value less its neighbours' would lose a small flow
/// through a large conductance to rounding. Source: Hestenes and Stiefel, J. Res. NBS 49 (1952) 409 (from memory).
/// </remarks>
internal sealed unsafe class ConjugateGradient
{
    // Single precision has given what it can when the residual has not halved for this many cycles.
    private const int StallLimit = 12;

    private readonly MultigridHierarchy _hierarchy;
    private readonly MultigridLevel _finest;
    private readonly SingleOperator _operator;
    private readonly LineSystem? _lines;
    private readonly Field<float> _direction;
    private readonly Field<float> _image;
    private readonly double[] _lineDirection, _lineImage;

    /// <summary>Makes a solver on the finest grid of a hierarchy.</summary>
    /// <param name="hierarchy">Grids.</param>
    /// <param name="single">The operator, in the units of the finest couplings.</param>
    /// <param name="lines">Line nodes; null for none.</param>
    public ConjugateGradient(MultigridHierarchy hierarchy, SingleOperator single, LineSystem? lines)
    {
        _hierarchy = hierarchy;
        _finest = hierarchy.Levels[0];
        _operator = single;
        _lines = lines;
        _direction = new(_finest.Layout);
        _image = new(_finest.Layout);
        Correction = new(_finest.Layout);
        _lineDirection = new double[lines?.Count ?? 0];
        _lineImage = new double[_lineDirection.Length];
        LineCorrection = new double[_lineDirection.Length];
    }

    /// <summary>Solution of the last call of <see cref="Solve"/> at the cells; 0 in cells that take no part.</summary>
    public Field<float> Correction { get; }

    /// <summary>Solution of the last call at the line nodes; 0 in nodes that take no part.</summary>
    public double[] LineCorrection { get; }

    /// <summary>Finds how far to go along the finest Value, as one cycle from the finest Load has left it.</summary>
    /// <remarks>One step of steepest descent, for when the wet set still moves and more would be wasted; passes over direction and residual are saved.</remarks>
    /// <returns>Length of the step; 0 when there is nothing to gain.</returns>
    public float StepAlongOneCycle()
    {
        _hierarchy.Cycle();
        double gain = LoadTimesValue();
        if (!(gain > 0)) return 0;
        double curvature = Apply(_finest.Value);
        return curvature > 0 ? (float)(gain / curvature) : 0;
    }

    private double[] LineLoad => _hierarchy.FinestLines?.Load ?? [];

    private double[] LineValue => _hierarchy.FinestLines?.Value ?? [];

    /// <summary>Solves for the finest Load, which is overwritten by what stays unbalanced.</summary>
    /// <param name="reduction">Wanted ratio of the residual's length after to before.</param>
    /// <param name="limit">Most cycles.</param>
    /// <param name="cancellation">Stops the iteration between cycles.</param>
    /// <returns>Cycles used.</returns>
    public int Solve(double reduction, int limit, CancellationToken cancellation)
    {
        double preconditioned = 0, first = 0, least = double.PositiveInfinity;
        int idle = 0;
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

            (least, idle) = now < least / 4 ? (now, 0) : (least, idle + 1);

            // The preconditioned norm of the residual before this step; a step gains about a digit.
            if (cycle >= limit || idle >= StallLimit || now <= first * reduction * reduction) return cycle;
        }
    }

    private double LoadTimesValue()
    {
        double total = 0;
        for (int layer = 0; layer < _finest.Layout.Layers; layer++)
        {
            for (int row = 0; row < _finest.Layout.Rows; row++)
            {
                float* r = _finest.Load.Row(row, layer), z = _finest.Value.Row(row, layer);
                Vector512<float> sum = Vector512<float>.Zero;
                for (int i = _finest.Active.Start(row); i < _finest.Active.End(row); i += PaddedLayout.Lanes)
                    sum = FusedMultiplyAdd(Load(r + i), Load(z + i), sum);
                total += Sum(sum);
            }
        }

        for (int node = 0; node < _lineImage.Length; node++) total += LineLoad[node] * LineValue[node];
        return total;
    }

    /// <summary>Turns the direction and applies the operator to it, each row as soon as the rows it reaches have turned.</summary>
    private double TurnAndApply(float keep, bool first)
    {
        double total = 0;
        int rows = _finest.Layout.Rows, reach = _operator.RowReach;
        for (int row = 0; row < rows + reach; row++)
        {
            for (int layer = 0; layer < _finest.Layout.Layers; layer++)
                if (row < rows) TurnRow(row, layer, keep, first);
            for (int layer = 0; layer < _finest.Layout.Layers; layer++)
                if (row >= reach) total += _operator.ApplyRow(row - reach, layer, _direction, _image);
        }

        if (_lines is null) return total;
        double[] value = LineValue;
        for (int node = 0; node < _lineDirection.Length; node++) _lineDirection[node] = first ? value[node] : keep * _lineDirection[node] + value[node];
        return total + ApplyLines(_direction, _lineDirection);
    }

    private double Apply(Field<float> vector)
    {
        double total = 0;
        for (int row = 0; row < _finest.Layout.Rows; row++)
            for (int layer = 0; layer < _finest.Layout.Layers; layer++) total += _operator.ApplyRow(row, layer, vector, _image);
        return _lines is null ? total : total + ApplyLines(vector, LineValue);
    }

    private void TurnRow(int row, int layer, float keep, bool first)
    {
        Vector512<float> factor = Create(keep);
        float* p = _direction.Row(row, layer), z = _finest.Value.Row(row, layer);
        int end = _finest.Active.End(row);
        for (int i = _finest.Active.Start(row); i < end; i += PaddedLayout.Lanes)
            (first ? Load(z + i) : FusedMultiplyAdd(factor, Load(p + i), Load(z + i))).Store(p + i);
    }

    private double ApplyLines(Field<float> vector, double[] lines)
    {
        double total = 0;
        float* p = vector.Origin, q = _image.Origin, diagonal = _finest.Diagonal.Origin;
        Array.Clear(_lineImage);
        for (int node = 0; node < _lineImage.Length; node++) _lineImage[node] = _lines!.Anchor[node] * lines[node];
        foreach ((int first, int second, double conductance) in _lines!.Joints)
        {
            double flow = conductance * (lines[first] - lines[second]);
            _lineImage[first] += flow;
            _lineImage[second] -= flow;
        }

        // Every link counts, wet or dry: a dry end holds 0.
        foreach ((int at, int node, double conductance) in _operator.Links)
        {
            double flow = conductance * (p[at] - lines[node]);
            _lineImage[node] -= flow;
            if (diagonal[at] <= 0) continue;
            q[at] += (float)flow;
            total += p[at] * flow;
        }

        for (int node = 0; node < _lineImage.Length; node++)
        {
            if (!_lines.IsWet[node]) _lineImage[node] = 0;
            total += lines[node] * _lineImage[node];
        }

        return total;
    }

    private void Advance(float step, bool first)
    {
        Vector512<float> length = Create(step);
        for (int layer = 0; layer < _finest.Layout.Layers; layer++)
        {
            for (int row = 0; row < _finest.Layout.Rows; row++)
            {
                float* p = _direction.Row(row, layer), q = _image.Row(row, layer), r = _finest.Load.Row(row, layer), x = Correction.Row(row, layer);
                int end = _finest.Active.End(row);
                for (int i = _finest.Active.Start(row); i < end; i += PaddedLayout.Lanes)
                {
                    (first ? length * Load(p + i) : FusedMultiplyAdd(length, Load(p + i), Load(x + i))).Store(x + i);
                    (Load(r + i) - length * Load(q + i)).Store(r + i);
                }
            }
        }

        double[] load = LineLoad;
        for (int node = 0; node < _lineImage.Length; node++)
        {
            LineCorrection[node] = (first ? 0 : LineCorrection[node]) + step * _lineDirection[node];
            load[node] -= step * _lineImage[node];
        }
    }

    private void ClearCorrection()
    {
        for (int layer = 0; layer < _finest.Layout.Layers; layer++)
        {
            for (int row = 0; row < _finest.Layout.Rows; row++)
            {
                int start = _finest.Active.Start(row), count = _finest.Active.End(row) - start;
                if (count > 0) new Span<float>(Correction.Row(row, layer) + start, count).Clear();
            }
        }

        Array.Clear(LineCorrection);
    }
}

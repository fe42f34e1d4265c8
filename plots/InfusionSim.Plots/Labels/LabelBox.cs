using SkiaSharp;

namespace InfusionSim.Plots.Labels;

/// <summary>A box that a label, a sign or a piece of a line takes up, turned by any angle.</summary>
/// <param name="Centre">Middle [px].</param>
/// <param name="HalfWidth">Half of the length along the box's own x [px].</param>
/// <param name="HalfHeight">Half of the length along the box's own y [px].</param>
/// <param name="Angle">Turn from the picture's x towards its y [rad].</param>
internal readonly record struct LabelBox(SKPoint Centre, float HalfWidth, float HalfHeight, float Angle = 0)
{
    // Kept, because placing asks thousands of boxes; no box is ever turned after it was made.
    private SKPoint Along { get; } = new(MathF.Cos(Angle), MathF.Sin(Angle));

    private SKPoint Across => new(-Along.Y, Along.X);

    private float Radius => HalfWidth + HalfHeight;

    /// <summary>Box around a straight line.</summary>
    internal static LabelBox Around(SKPoint from, SKPoint to, float width)
    {
        var chord = to - from;
        return new LabelBox(
            new SKPoint((from.X + to.X) / 2, (from.Y + to.Y) / 2),
            chord.Length / 2 + width / 2,
            width / 2,
            MathF.Atan2(chord.Y, chord.X));
    }

    /// <summary>The four corners in order [px].</summary>
    internal SKPoint[] Corners()
    {
        var (along, across) = (Along, Across);
        var (x, y) = (new SKPoint(along.X * HalfWidth, along.Y * HalfWidth), new SKPoint(across.X * HalfHeight, across.Y * HalfHeight));
        return [Centre - x - y, Centre + x - y, Centre + x + y, Centre - x + y];
    }

    /// <summary>The same box with a margin on every side [px].</summary>
    internal LabelBox Grow(float margin) => this with { HalfWidth = HalfWidth + margin, HalfHeight = HalfHeight + margin };

    /// <summary>Whether a point lies in the box.</summary>
    internal bool Contains(SKPoint point)
    {
        var offset = point - Centre;
        return Math.Abs(offset.X) <= Radius && Math.Abs(offset.Y) <= Radius
            && Math.Abs(Dot(offset, Along)) <= HalfWidth && Math.Abs(Dot(offset, Across)) <= HalfHeight;
    }

    /// <summary>Whether two boxes share a place, by the separating-axis test.</summary>
    internal bool Overlaps(LabelBox other) =>
        Math.Abs(other.Centre.X - Centre.X) <= Radius + other.Radius && Math.Abs(other.Centre.Y - Centre.Y) <= Radius + other.Radius
        && !IsApart(other, Along) && !IsApart(other, Across) && !IsApart(other, other.Along) && !IsApart(other, other.Across);

    private bool IsApart(LabelBox other, SKPoint axis) =>
        Math.Abs(Dot(other.Centre - Centre, axis)) > Reach(axis) + other.Reach(axis);

    private float Reach(SKPoint axis) => HalfWidth * Math.Abs(Dot(Along, axis)) + HalfHeight * Math.Abs(Dot(Across, axis));

    private static float Dot(SKPoint a, SKPoint b) => a.X * b.X + a.Y * b.Y;
}

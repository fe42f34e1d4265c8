using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Words;

/// <summary>The rectangle round the outline.</summary>
/// <param name="Left">Left side [mm].</param>
/// <param name="Bottom">Lower side [mm].</param>
/// <param name="Width">Width [mm].</param>
/// <param name="Height">Height [mm].</param>
public readonly record struct DrawingBox(double Left, double Bottom, double Width, double Height)
{
    /// <summary>The rectangle round a plan's outline.</summary>
    /// <param name="plan">A plan whose outline has corners.</param>
    public static DrawingBox Of(InfusionPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        double left = double.PositiveInfinity, bottom = double.PositiveInfinity, right = double.NegativeInfinity, top = double.NegativeInfinity;
        foreach (Point point in plan.Preform.Outline.Points)
        {
            (left, right) = (Math.Min(left, point.XMm), Math.Max(right, point.XMm));
            (bottom, top) = (Math.Min(bottom, point.YMm), Math.Max(top, point.YMm));
        }

        return new DrawingBox(left, bottom, right - left, top - bottom);
    }
}

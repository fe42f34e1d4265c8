using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Words;

/// <summary>Says in words where on the panel something is, seen from the bag side.</summary>
/// <remarks>A place counts as a corner or an edge when it lies in the outer tenth of the drawing; what is "an edge" of a curved outline is its outermost part.</remarks>
public static class PlaceWords
{
    private const double OuterShare = 0.1;

    /// <summary>Where a point is: the lower left corner, the right edge 120 mm up, 300 mm right and 200 mm up.</summary>
    /// <param name="point">The place.</param>
    /// <param name="plan">The plan whose outline it lies in.</param>
    public static string Of(Point point, InfusionPlan plan)
    {
        ArgumentNullException.ThrowIfNull(point);
        DrawingBox box = DrawingBox.Of(plan);
        double right = point.XMm - box.Left, up = point.YMm - box.Bottom;
        string across = Side(right, box.Width, "left", "right"), along = Side(up, box.Height, "lower", "upper");
        return (across, along) switch
        {
            ("", "") => $"{Round(right, box)} mm right, {Round(up, box)} mm up from the lower left",
            ("", _) => $"the {along} edge, {Round(right, box)} mm right",
            (_, "") => $"the {across} edge, {Round(up, box)} mm up",
            _ => $"the {along} {across} corner",
        };
    }

    /// <summary>The last place to fill: a whole edge when the front comes to it all at once, else the point.</summary>
    /// <param name="forecast">The forecast, with a last place.</param>
    /// <param name="map">When the front passes each square; null when it is not at hand.</param>
    /// <param name="plan">The plan.</param>
    public static string OfLast(FillForecast forecast, FrontMap? map, InfusionPlan plan)
    {
        ArgumentNullException.ThrowIfNull(forecast);
        if (map is not null && forecast.HasFillTimeS && LastEdge.Of(map, plan) is string edge) return edge;
        return Of(forecast.LastToFill, plan);
    }

    private static string Side(double distance, double length, string near, string far)
    {
        if (distance < OuterShare * length) return near;
        return distance > (1 - OuterShare) * length ? far : "";
    }

    private static string Round(double millimetres, DrawingBox box)
    {
        double step = Math.Max(box.Width, box.Height) >= 1000 ? 10 : Math.Max(box.Width, box.Height) >= 100 ? 5 : 1;
        return Units.Numbers.Say(step * Math.Round(millimetres / step));
    }
}

using InfusionSim.Plots.Contours;

namespace InfusionSim.Plots.Words;

/// <summary>Places on a panel in words.</summary>
internal static class PlaceText
{
    private const double Near = 0.12;

    /// <summary>A place in words: the top right corner, the left edge, the middle.</summary>
    internal static string Of(Spot spot, ClothArea cloth)
    {
        var across = (spot.XMm - cloth.LeftMm) / cloth.WidthMm;
        var up = (spot.YMm - cloth.LowestMm) / cloth.HeightMm;
        var side = across < Near ? "left" : across > 1 - Near ? "right" : "";
        var level = up < Near ? "bottom" : up > 1 - Near ? "top" : "";
        if (side.Length > 0 && level.Length > 0)
        {
            return $"{level} {side} corner";
        }

        if (side.Length + level.Length > 0)
        {
            return $"{side}{level} edge";
        }

        return Math.Abs(across - 0.5) < 0.2 && Math.Abs(up - 0.5) < 0.2
            ? "middle"
            : $"{(up < 0.4 ? "lower " : up > 0.6 ? "upper " : "")}{(across < 0.4 ? "left" : across > 0.6 ? "right" : "middle")} part";
    }
}

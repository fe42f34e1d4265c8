using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Words;

/// <summary>Tells whether the front comes to a whole edge at once: then the last place is that edge, not the corner that wins the tie.</summary>
internal static class LastEdge
{
    /// <summary>Arrivals this near to the last one count as the same moment [-].</summary>
    private const double SameMoment = 1e-3;

    /// <summary>Share of the side that must fill last together [-].</summary>
    private const double MostOfTheSide = 0.6;

    /// <summary>The edge in words, or null when it is not an edge that fills last.</summary>
    public static string? Of(FrontMap map, InfusionPlan plan)
    {
        CellGrid grid = map.Grid;
        float last = 0;
        for (int square = 0; square < map.Squares.Length; square++)
            if (map.Squares[square] == (byte)SquareState.Wets) last = Math.Max(last, map.ArrivalTimeS[square]);
        double left = double.PositiveInfinity, bottom = double.PositiveInfinity, right = double.NegativeInfinity, top = double.NegativeInfinity;
        for (int square = 0; square < map.Squares.Length; square++)
        {
            if (map.Squares[square] != (byte)SquareState.Wets || map.ArrivalTimeS[square] < (1 - SameMoment) * last) continue;
            double x = grid.OriginXMm + (square % grid.Columns + 0.5) * grid.CellMm, y = grid.OriginYMm + (square / grid.Columns + 0.5) * grid.CellMm;
            (left, right) = (Math.Min(left, x), Math.Max(right, x));
            (bottom, top) = (Math.Min(bottom, y), Math.Max(top, y));
        }

        DrawingBox box = DrawingBox.Of(plan);
        double near = 2 * grid.CellMm;
        bool tall = top - bottom + grid.CellMm >= MostOfTheSide * box.Height, wide = right - left + grid.CellMm >= MostOfTheSide * box.Width;
        if (tall && !wide && left >= box.Left + box.Width - near) return "the right edge";
        if (tall && !wide && right <= box.Left + near) return "the left edge";
        if (wide && !tall && bottom >= box.Bottom + box.Height - near) return "the upper edge";
        if (wide && !tall && top <= box.Bottom + near) return "the lower edge";
        return null;
    }
}

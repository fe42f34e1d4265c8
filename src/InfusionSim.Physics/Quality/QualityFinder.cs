using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Quality;

/// <summary>Reads the quality numbers of a fill from its arrivals.</summary>
internal static class QualityFinder
{
    /// <summary>Finds the numbers.</summary>
    /// <param name="map">Where the resin goes.</param>
    /// <param name="clock">When.</param>
    /// <param name="wetting">How the resin wets the fibres; null when that is not known.</param>
    /// <param name="end">Drive clock at the end [-].</param>
    public static FillQuality Of(FillMap map, DriveClock clock, Wetting? wetting, double end)
    {
        double[] speeds = FrontSpeeds.Of(map, clock, end), margins = MarginsOf(map, clock, end);
        int last = Smallest(margins);
        FillQuality quality = new()
        {
            FrontSpeeds = speeds,
            FrontSpeed = RangeOf(map, speeds),
            GelMargins = margins,
            SmallestGelMargin = last < 0 ? null : margins[last],
            SmallestGelMarginAt = last < 0 ? (Point2?)null : map.Problem.Cells.CentroidOf(last),
        };
        return wetting is null ? quality : WithCapillaryNumbers(quality, map, clock, wetting);
    }

    private static FillQuality WithCapillaryNumbers(FillQuality quality, FillMap map, DriveClock clock, Wetting wetting)
    {
        double[] numbers = new double[quality.FrontSpeeds.Length];
        double below = 0, above = 0, known = 0;
        for (int cell = 0; cell < numbers.Length; cell++)
        {
            double speed = quality.FrontSpeeds[cell];
            numbers[cell] = double.NaN;
            if (double.IsNaN(speed)) continue;
            double arrival = map.Arrival[map.Problem.ToolSide[cell]], area = map.Problem.Cells.Area[cell];
            numbers[cell] = CapillaryNumber.Of(clock.ViscosityAt(clock.TimeAt(arrival)), speed, wetting);
            known += area;
            if (numbers[cell] < CapillaryNumber.PublishedFrom) below += area;
            if (numbers[cell] > CapillaryNumber.PublishedTo) above += area;
        }

        return quality with
        {
            CapillaryNumbers = numbers,
            CapillaryNumber = RangeOf(map, numbers),
            BelowPublished = known > 0 ? below / known : null,
            AbovePublished = known > 0 ? above / known : null,
        };
    }

    private static double[] MarginsOf(FillMap map, DriveClock clock, double end)
    {
        double[] arrivals = map.ToolSideArrival;
        return [.. arrivals.Select(arrival => arrival <= end && clock.GelClock > 0 ? Math.Max(0, 1 - arrival / clock.GelClock) : double.NaN)];
    }

    private static QualityRange? RangeOf(FillMap map, double[] values)
    {
        int[] inOrder = [.. Enumerable.Range(0, values.Length).Where(cell => !double.IsNaN(values[cell])).OrderBy(cell => values[cell])];
        if (inOrder.Length == 0) return null;
        double all = inOrder.Sum(cell => map.Problem.Cells.Area[cell]);
        return new(ValueAt(FillQuality.LeftOut), ValueAt(1 - FillQuality.LeftOut));

        double ValueAt(double share)
        {
            double sum = 0;
            foreach (int cell in inOrder)
            {
                sum += map.Problem.Cells.Area[cell];
                if (sum >= share * all) return values[cell];
            }

            return values[inOrder[^1]];
        }
    }

    // The lowest and then the leftmost of equals, as for the last place to fill.
    private static int Smallest(double[] values)
    {
        const double Tie = 1e-6;
        int smallest = -1;
        for (int cell = 0; cell < values.Length; cell++)
            if (!double.IsNaN(values[cell]) && (smallest < 0 || values[cell] < values[smallest] - Tie)) smallest = cell;
        return smallest;
    }
}

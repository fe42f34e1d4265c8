namespace InfusionSim.Physics.Flow;

/// <summary>The cubic through two values with two slopes, on the interval from 0 to 1 (Hermite interpolation).</summary>
internal static class HermiteCubic
{
    private const int StepLimit = 60;

    /// <summary>Where it crosses 0 [-], from 0 to 1.</summary>
    /// <param name="first">Value at 0, below 0.</param>
    /// <param name="firstSlope">Slope at 0.</param>
    /// <param name="second">Value at 1, at least 0.</param>
    /// <param name="secondSlope">Slope at 1.</param>
    public static double Root(double first, double firstSlope, double second, double secondSlope)
    {
        double low = 0, high = 1, at = first / (first - second);
        for (int step = 0; step < StepLimit; step++)
        {
            double rest = 1 - at;
            double value = rest * rest * ((1 + 2 * at) * first + at * firstSlope) + at * at * ((1 + 2 * rest) * second - rest * secondSlope);
            if (value < 0) low = at;
            else high = at;
            double slope = 6 * at * rest * (second - first) + rest * (1 - 3 * at) * firstSlope + at * (3 * at - 2) * secondSlope;
            double next = slope > 0 ? at - value / slope : double.NaN;
            if (!(next > low && next < high)) next = (low + high) / 2;
            if (Math.Abs(next - at) < 1e-13) return next;
            at = next;
        }

        return at;
    }
}

using InfusionSim.Physics.Flow;

namespace InfusionSim.Verification.Tests.Settings;

/// <summary>Finds the clock at which something has come to pass.</summary>
public static class ClockSearch
{
    /// <summary>Clock at which a rising measure of the state reaches a value [-]; by false position inside a bracket, to 1e-7 of the fill.</summary>
    /// <param name="map">The map.</param>
    /// <param name="measure">Rises with the clock.</param>
    /// <param name="value">The value to reach.</param>
    /// <param name="end">Clock at which it is surely reached [-]; null for the end of the fill.</param>
    public static double WhenReached(FillMap map, Func<FillState, double> measure, double value, double? end = null)
    {
        double low = 0, high = end ?? map.FillClock, below = -value, above = measure(Chain.State(map, high)) - value;
        above.ShouldBeGreaterThan(0, "the value is not reached during the fill");
        for (int k = 0; k < 60 && high - low > 1e-7 * map.FillClock; k++)
        {
            // Every third step halves the bracket, so that it cannot stay one-sided.
            double middle = k % 3 == 2 ? (low + high) / 2 : low + (high - low) * below / (below - above);
            middle = Math.Clamp(middle, low + (high - low) * 1e-3, high - (high - low) * 1e-3);
            double there = measure(Chain.State(map, middle)) - value;
            if (there < 0) (low, below) = (middle, there);
            else (high, above) = (middle, there);
        }

        return (low + high) / 2;
    }
}

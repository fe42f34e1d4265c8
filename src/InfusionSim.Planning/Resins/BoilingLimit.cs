using InfusionSim.Physics.Resins;
using InfusionSim.Physics.Vacuum;
using MathNet.Numerics.RootFinding;

namespace InfusionSim.Planning.Resins;

/// <summary>How warm a resin may be before a volatile that its card names boils under the vacuum.</summary>
internal static class BoilingLimit
{
    private const double Accuracy = 1e-6;

    /// <summary>Highest temperature at which nothing boils [K]: that of the range where nothing boils in it; null where something boils in all of it.</summary>
    /// <param name="resin">The resin.</param>
    /// <param name="deepest">Deepest vacuum under the bag [Pa absolute].</param>
    /// <param name="range">The temperatures that count.</param>
    public static double? Of(Resin resin, double deepest, TemperatureRange range)
    {
        if (resin.Volatiles.Count == 0 || Excess(range.Highest) <= 0) return range.Highest;
        if (Excess(range.Lowest) > 0) return null;
        return Math.Max(range.Lowest, Brent.FindRoot(Excess, range.Lowest, range.Highest, Accuracy) - Accuracy);

        double Excess(double temperature) => new Volatiles(resin.Volatiles, temperature).BubblePressure - deepest;
    }
}

using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Forecasts;

namespace InfusionSim.Planning.Mixing;

/// <summary>How much has been drawn from one pot by when.</summary>
/// <remarks>
/// Looked at in <see cref="Moments"/> moments that are evenly spaced in the root of time, between which the mass runs straight in that root: exact
/// for a straight front
/// at a constant viscosity. After the panel is full the vents draw on at their last rate.
/// </remarks>
internal sealed class PotDraw
{
    /// <summary>Moments that are looked at [-].</summary>
    public const int Moments = 24;

    private const double Rounding = 1e-9;

    private readonly double[] times, drawn;

    private readonly double rateAfter;

    private PotDraw(double[] times, double[] drawn, double rateAfter) => (this.times, this.drawn, this.rateAfter) = (times, drawn, rateAfter);

    /// <summary>Follows every pot of a forecast.</summary>
    /// <param name="forecast">The forecast.</param>
    /// <param name="pots">The pots.</param>
    /// <param name="density">Density of the mixed resin [kg/m³].</param>
    /// <param name="stateAt">The panel at a time of the forecast.</param>
    /// <param name="cancellation">Stops the work between moments.</param>
    public static IReadOnlyList<PotDraw> Of(Forecast forecast, IReadOnlyList<PotShare> pots, double density, Func<double, FillState> stateAt, CancellationToken cancellation)
    {
        double[] times = [.. Enumerable.Range(0, Moments + 1).Select(k => forecast.EndTime * k * k / Moments / Moments)];
        double[][] drawn = [.. pots.Select(_ => new double[times.Length])];
        for (int k = 1; k < times.Length; k++)
        {
            cancellation.ThrowIfCancellationRequested();
            FillState state = stateAt(times[k]);
            for (int pot = 0; pot < pots.Count; pot++) drawn[pot][k] = Math.Max(drawn[pot][k - 1], density * pots[pot].Feeds.Sum(feed => DrawnBy(state, feed)));
        }

        double after = density * forecast.Vents.Sum(static vent => vent.ResinOutRate);
        return [.. pots.Select((pot, k) => new PotDraw(times, drawn[k], pot.OfLater * after))];
    }

    /// <summary>Mass drawn by a time [kg].</summary>
    /// <param name="time">Time from the opening of the first feed [s], at least 0.</param>
    public double At(double time)
    {
        if (time >= times[^1]) return drawn[^1] + rateAfter * (time - times[^1]);
        int k = 1;
        while (times[k] < time) k++;
        double share = (Math.Sqrt(time) - Math.Sqrt(times[k - 1])) / (Math.Sqrt(times[k]) - Math.Sqrt(times[k - 1]));
        return drawn[k - 1] + share * (drawn[k] - drawn[k - 1]);
    }

    /// <summary>When so much has been drawn [s]; 0 for nothing, null when it never is.</summary>
    /// <param name="mass">Mass [kg].</param>
    public double? When(double mass)
    {
        if (mass <= 0) return 0;
        if (mass > drawn[^1] * (1 + Rounding)) return rateAfter > 0 ? times[^1] + (mass - drawn[^1]) / rateAfter : null;
        if (mass >= drawn[^1]) return times[^1];
        int k = 1;
        while (drawn[k] < mass) k++;
        double share = (mass - drawn[k - 1]) / (drawn[k] - drawn[k - 1]);
        double root = Math.Sqrt(times[k - 1]) + share * (Math.Sqrt(times[k]) - Math.Sqrt(times[k - 1]));
        return root * root;
    }

    private static double DrawnBy(FillState state, int feed) => state.ResinIn[feed] + (feed < state.FeedLineVolume.Count ? state.FeedLineVolume[feed] : 0);
}

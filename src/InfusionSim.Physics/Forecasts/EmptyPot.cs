using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Forecasts;

/// <summary>The pot that is empty first, before the panel is full: air follows the resin from then on.</summary>
/// <param name="Pot">Its name.</param>
/// <param name="Feed">Index of the first feed that draws from it.</param>
/// <param name="Clock">Drive clock at which it is empty [-].</param>
/// <param name="Missing">What more it would have to hold up to the end of the fill [m³].</param>
public sealed record EmptyPot(string Pot, int Feed, double Clock, double Missing)
{
    private const double Tolerance = 1e-9;
    private const int StepLimit = 60;

    /// <summary>Finds it; null when every pot holds enough.</summary>
    /// <param name="map">Where the resin goes.</param>
    /// <param name="end">Drive clock up to which resin is drawn [-].</param>
    /// <param name="density">Density of the resin [kg/m³].</param>
    /// <param name="cancellation">Stops the work.</param>
    internal static EmptyPot? Of(FillMap map, double end, double density, CancellationToken cancellation)
    {
        EmptyPot? first = null;
        foreach (Pot pot in map.Problem.Panel?.Pots ?? [])
        {
            int[] feeds = [.. Enumerable.Range(0, map.Problem.Feeds.Count).Where(feed => map.Problem.Panel!.Feeds[feed].Pot == pot.Name)];
            if (pot.Mass is not double mass || feeds.Length == 0) continue;
            double held = mass / density, drawn = DrawnAt(end);
            if (drawn <= held * (1 + Tolerance)) continue;
            double clock = ClockWhen(held);
            if (first is null || clock < first.Clock) first = new(pot.Name, feeds[0], clock, drawn - held);

            double DrawnAt(double at)
            {
                FillState state = map.StateAt(at, cancellation: cancellation);
                return feeds.Sum(feed => state.ResinIn[feed] + (feed < state.FeedLineVolume.Count ? state.FeedLineVolume[feed] : 0));
            }

            // What is drawn grows with the clock; halving with a straight line between where that is better.
            double ClockWhen(double volume)
            {
                (double low, double high, double drawnLow, double drawnHigh) = (0, end, 0, drawn);
                for (int step = 0; step < StepLimit && high - low > Tolerance * end; step++)
                {
                    double share = step % 2 == 0 ? (volume - drawnLow) / (drawnHigh - drawnLow) : 0.5, middle = low + share * (high - low);
                    double here = DrawnAt(middle);
                    if (Math.Abs(here - volume) <= Tolerance * volume) return middle;
                    if (here < volume) (low, drawnLow) = (middle, here);
                    else (high, drawnHigh) = (middle, here);
                }

                return high;
            }
        }

        return first;
    }
}

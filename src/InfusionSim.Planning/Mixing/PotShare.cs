using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Planning.Mixing;

/// <summary>What one pot gives of a panel's need.</summary>
/// <param name="Name">What the plan calls it, or the feed it belongs to.</param>
/// <param name="IsNamed">Whether the plan names the pot.</param>
/// <param name="Feeds">Indices of the feeds that draw from it.</param>
/// <param name="Drawn">Mass that they draw from it [kg].</param>
/// <param name="OfLater">Its share of what is drawn once the panel is full [-].</param>
internal sealed record PotShare(string Name, bool IsNamed, IReadOnlyList<int> Feeds, double Drawn, double OfLater)
{
    /// <summary>Shares out a need over the pots, in the order in which the feeds name them.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="forecast">Its forecast.</param>
    /// <param name="need">Its need.</param>
    /// <param name="density">Density of the mixed resin [kg/m³].</param>
    public static IReadOnlyList<PotShare> Of(Panel panel, Forecast forecast, ResinNeed need, double density)
    {
        double[] through = [.. forecast.ResinIn];
        double all = through.Sum(), intoCloth = need.Drawn - need.InLines;
        return [.. Enumerable.Range(0, panel.Feeds.Count).GroupBy(feed => (panel.Feeds[feed].Pot, Own: panel.Feeds[feed].Pot is null ? feed : -1)).Select(pot =>
        {
            double share = all > 0 ? pot.Sum(feed => through[feed]) / all : (double)pot.Count() / panel.Feeds.Count;
            return new PotShare(pot.Key.Pot ?? panel.Feeds[pot.Key.Own].Name, pot.Key.Pot is not null, [.. pot], share * intoCloth + density * pot.Sum(LineVolume), share);
        })];

        double LineVolume(int feed) => (feed < forecast.FeedLineVolumes.Count ? forecast.FeedLineVolumes[feed] : 0) + ResinNeed.PrimedVolume(panel, feed);
    }
}

using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Planning.Mixing;

/// <summary>How much to mix for one panel in all, without its batches: no look at any moment of the fill is needed for that.</summary>
public static class MixTotal
{
    /// <summary>Mass of resin and hardener together, reserve and pot rests among it, as in <see cref="MixSheet.Mixed"/> [kg].</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="forecast">Its forecast.</param>
    /// <param name="density">Density of the mixed resin [kg/m³], above 0.</param>
    /// <param name="wishes">How somebody wants to mix.</param>
    public static double Of(Panel panel, Forecast forecast, double density, MixWishes wishes)
    {
        ArgumentNullException.ThrowIfNull(panel);
        ArgumentNullException.ThrowIfNull(forecast);
        ArgumentNullException.ThrowIfNull(wishes);
        ResinNeed need = ResinNeed.Of(forecast, density, wishes.VentsOpenAfter);
        return need.Drawn * (1 + wishes.ReserveFraction) + wishes.PotRest * PotShare.Of(panel, forecast, need, density).Count(static share => share.Drawn > 0);
    }
}

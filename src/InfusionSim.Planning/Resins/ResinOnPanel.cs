using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Resins;

namespace InfusionSim.Planning.Resins;

/// <summary>What one resin does on a panel.</summary>
/// <param name="Resin">The resin.</param>
/// <param name="Forecast">Its forecast.</param>
/// <param name="MeetsGoals">Whether it fills and meets every goal.</param>
/// <param name="ViscosityAtOpening">Viscosity when the first feed opens [Pa·s].</param>
/// <param name="ViscosityAtEnd">Viscosity at the end of the fill [Pa·s]; null where it has none, at gel.</param>
/// <param name="ToMix">Mass of resin and hardener together to mix for it, reserve and pot rests among it [kg].</param>
/// <param name="Sharing">Whether its flow was followed together with that of other resins.</param>
/// <param name="Curve">How the fill goes, in order of time, from the opening of the first feed.</param>
/// <param name="BestTemperature">The temperature at which it is full soonest with the wished gel margin; null where the card knows one viscosity only.</param>
public sealed record ResinOnPanel(
    Resin Resin,
    Forecast Forecast,
    bool MeetsGoals,
    double ViscosityAtOpening,
    double? ViscosityAtEnd,
    double ToMix,
    FlowSharing Sharing,
    IReadOnlyList<ResinMoment> Curve,
    BestTemperature? BestTemperature)
{
    /// <summary>
    /// Time from opening of the first feed up to which its flow was taken from that of another resin [s]; 0 where it was followed from the beginning,
    /// +∞ where nothing differs.
    /// </summary>
    public double TakenUntil { get; init; }
}

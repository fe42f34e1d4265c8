using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;

namespace InfusionSim.Cli.Answers;

/// <summary>What happens between two moments that somebody watches: marks and vents that resin reaches, clamps that turn by their rules.</summary>
public static class SeenOnTheWay
{
    // A clamp that was turned at a moment is turned at its rounded minute.
    private const double Rounding = 1e-9;

    /// <summary>One line for each happening after one moment and up to another, in order of time.</summary>
    /// <param name="forecast">The forecast.</param>
    /// <param name="afterS">After this time [s].</param>
    /// <param name="untilS">Up to this time [s], included.</param>
    public static IEnumerable<string> Between(FillForecast forecast, double afterS, double untilS)
    {
        ArgumentNullException.ThrowIfNull(forecast);
        return from seen in Happenings(forecast)
               where seen.TimeS > afterS * (1 + Rounding) && seen.TimeS <= untilS
               orderby seen.TimeS
               select $"{Amounts.Time(seen.TimeS),10}  {seen.What}";
    }

    private static IEnumerable<(double TimeS, string What)> Happenings(FillForecast forecast)
    {
        foreach (TimingMarkForecast mark in forecast.TimingMarks)
            if (mark.HasArrivalTimeS) yield return (mark.ArrivalTimeS, $"the front passes {mark.Name}");
        foreach (VentForecast vent in forecast.Vents)
            if (vent.HasArrivalTimeS) yield return (vent.ArrivalTimeS, $"resin shows in {vent.Name}");
        foreach (ClampEvent turn in forecast.ClampEvents) yield return (turn.TimeS, Turn(turn));
    }

    private static string Turn(ClampEvent turn) => turn switch
    {
        { HasPressureMbarAbs: true } => $"the bag goes to {Numbers.Say(turn.PressureMbarAbs)} mbar",
        { OpenFraction: 0 } => $"{turn.Line} shuts",
        { OpenFraction: 1 } => $"{turn.Line} opens",
        _ => $"{turn.Line} goes to {Numbers.Say(turn.OpenFraction)} open",
    };
}

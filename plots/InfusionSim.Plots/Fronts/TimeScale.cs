using InfusionSim.Plots.Contours;
using InfusionSim.Plots.Keys;
using InfusionSim.Plots.Styling;
using InfusionSim.Plots.Words;
using InfusionSim.Protocol.Words;
using SkiaSharp;

namespace InfusionSim.Plots.Fronts;

/// <summary>The round times and colours that one picture, or several side by side, show arrivals with.</summary>
internal sealed class TimeScale
{
    /// <summary>Scale up to an end.</summary>
    /// <param name="endS">When the last place of the slowest panel is full [s].</param>
    internal TimeScale(double endS)
    {
        EndS = endS;
        TimesS = RoundTimes.Before(endS);
        Colours = [.. Enumerable.Range(0, TimesS.Length + 1).Select(i => TimeColours.Of(i, TimesS.Length + 1))];
    }

    /// <summary>When the last place of the slowest panel is full [s].</summary>
    internal double EndS { get; }

    /// <summary>Times of the isochrones, in order [s].</summary>
    internal double[] TimesS { get; }

    /// <summary>Colour before the first time, between each two, and after the last.</summary>
    internal SKColor[] Colours { get; }

    /// <summary>Texts of the times.</summary>
    internal string[] Texts => [.. TimesS.Select(TimeText.Of)];

    /// <summary>The bar that explains the colours.</summary>
    /// <param name="side">The side that is shown; empty for a panel of one layer.</param>
    internal ClassScale Key(string side = "") =>
        new(side.Length > 0 ? $"Front on the {side}" : "Front arrives", Colours, Texts, "0", Amounts.Time(EndS));

    /// <summary>Round times that have passed at a time [s].</summary>
    internal static IEnumerable<double> Earlier(double endS, double timeS) => RoundTimes.Before(endS).Where(round => round < timeS);
}

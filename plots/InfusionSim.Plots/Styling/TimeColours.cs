using ScottPlot.Colormaps;
using SkiaSharp;

namespace InfusionSim.Plots.Styling;

/// <summary>Colours of arrival times: early light, late dark, so that a grey print keeps the order.</summary>
/// <remarks>
/// The map is "deep" of the cmocean set, perceptually uniform and readable with every common colour blindness (Thyng et al., Oceanography 29 (2016) 9),
/// as ScottPlot carries it; cut before its darkest part so that black lines stay visible on it.
/// </remarks>
internal static class TimeColours
{
    private const double Lightest = 0.02;
    private const double Darkest = 0.78;
    private static readonly Deep Map = new();

    /// <summary>Colour of one class of times.</summary>
    /// <param name="index">Which class, 0 the earliest [-].</param>
    /// <param name="count">How many classes there are [-].</param>
    internal static SKColor Of(int index, int count)
    {
        var share = count == 1 ? 0.5 : (double)index / (count - 1);
        var colour = Map.GetColor(Lightest + share * (Darkest - Lightest));
        return new SKColor(colour.Red, colour.Green, colour.Blue);
    }
}

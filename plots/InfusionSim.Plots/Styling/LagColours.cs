using ScottPlot.Colormaps;
using SkiaSharp;

namespace InfusionSim.Plots.Styling;

/// <summary>Colours of how far one side is behind the other: level light, far behind dark; another map than those of times and pressures, so that they are never mixed up.</summary>
/// <remarks>The map is "speed" of the cmocean set, perceptually uniform: Thyng et al., Oceanography 29 (2016) 9, as ScottPlot carries it.</remarks>
internal static class LagColours
{
    private const double Lightest = 0.02;
    private const double Darkest = 0.72;
    private static readonly Speed Map = new();

    /// <summary>Colour of one class of lags.</summary>
    /// <param name="index">Which class, 0 the smallest [-].</param>
    /// <param name="count">How many classes there are [-].</param>
    internal static SKColor Of(int index, int count)
    {
        var share = count == 1 ? 0 : (double)index / (count - 1);
        var colour = Map.GetColor(Lightest + share * (Darkest - Lightest));
        return new SKColor(colour.Red, colour.Green, colour.Blue);
    }
}

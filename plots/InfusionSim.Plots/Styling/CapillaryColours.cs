using ScottPlot.Colormaps;
using SkiaSharp;

namespace InfusionSim.Plots.Styling;

/// <summary>Colours of capillary numbers: low light, high dark; another map than those of the other pictures, so that they are never mixed up.</summary>
/// <remarks>The map is "turbid" of the cmocean set, perceptually uniform: Thyng et al., Oceanography 29 (2016) 9, as ScottPlot carries it.</remarks>
internal static class CapillaryColours
{
    private const double Lightest = 0.03;
    private const double Darkest = 0.7;
    private static readonly Turbid Map = new();

    /// <summary>Colour of one class.</summary>
    /// <param name="index">Which class, 0 the lowest [-].</param>
    /// <param name="count">How many classes there are [-].</param>
    internal static SKColor Of(int index, int count)
    {
        var share = count == 1 ? 0.5 : (double)index / (count - 1);
        var colour = Map.GetColor(Lightest + share * (Darkest - Lightest));
        return new SKColor(colour.Red, colour.Green, colour.Blue);
    }
}

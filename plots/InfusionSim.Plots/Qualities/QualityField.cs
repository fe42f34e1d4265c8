using InfusionSim.Plots.Contours;
using SkiaSharp;

namespace InfusionSim.Plots.Qualities;

/// <summary>A number in every square that a picture shows in classes.</summary>
/// <param name="Values">The number in the middle of each square, NaN where it has none. [rows × columns], x fastest.</param>
/// <param name="Levels">Numbers at which lines are drawn, in order.</param>
/// <param name="IsOverPowersOfTen">Whether it runs over powers of ten, so that lines are found on its logarithm.</param>
/// <param name="Text">A level as its line carries it.</param>
/// <param name="Colour">Colour of a class, from its place and the number of classes.</param>
internal sealed record QualityField(double[] Values, double[] Levels, bool IsOverPowersOfTen, Func<double, string> Text, Func<int, int, SKColor> Colour)
{
    /// <summary>Levels that stand out.</summary>
    internal double[] Strong { get; init; } = [];

    /// <summary>A place to mark, with what stands beside it; null for none.</summary>
    internal (Spot At, string Says)? Mark { get; init; }

    /// <summary>Colours of the classes, lowest first.</summary>
    internal SKColor[] Colours => [.. Enumerable.Range(0, Levels.Length + 1).Select(i => Colour(i, Levels.Length + 1))];

    /// <summary>A number on the scale that lines are found on.</summary>
    internal double Scaled(double value) => IsOverPowersOfTen ? Math.Log10(value) : value;
}

namespace InfusionSim.Plots.Words;

/// <summary>Areas in words.</summary>
internal static class AreaText
{
    /// <summary>One area in words: 0.4 cm², 12 cm².</summary>
    /// <param name="squareMillimetres">Area [mm²].</param>
    internal static string Of(double squareMillimetres)
    {
        var squareCentimetres = squareMillimetres / 100;
        return squareCentimetres < 10 ? $"{squareCentimetres:0.#} cm²" : $"{squareCentimetres:0} cm²";
    }
}

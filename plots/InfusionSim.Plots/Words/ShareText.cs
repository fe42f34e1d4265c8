namespace InfusionSim.Plots.Words;

/// <summary>Shares in words.</summary>
internal static class ShareText
{
    /// <summary>One share in words, never rounded up to the whole: 62 %, 99.9 %, 100 %.</summary>
    /// <param name="fraction">Share [-].</param>
    internal static string Of(double fraction) => fraction switch
    {
        >= 0.9995 => "100 %",
        > 0.99 => $"{Math.Floor(fraction * 1000) / 10:0.0} %",
        _ => $"{fraction * 100:0} %",
    };
}

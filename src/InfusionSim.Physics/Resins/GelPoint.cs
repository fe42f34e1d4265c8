namespace InfusionSim.Physics.Resins;

/// <summary>The degree of cure at which a step-growth resin gels, from the chemistry of its parts.</summary>
/// <remarks>
/// α_g = 1/√(r (f − 1)(g − 1)). Source: Flory, Principles of Polymer Chemistry, Cornell 1953, and Stockmayer (from memory). For epoxy and amine;
/// measured ones lie between 0.55 and 0.65. Resins that cure by radicals gel far earlier, at 0.02 to 0.10 (both from memory).
/// </remarks>
public static class GelPoint
{
    /// <summary>Degree of cure of the groups that are in short supply [-].</summary>
    /// <param name="ratio">Groups in short supply over groups in excess r [-], above 0, at most 1.</param>
    /// <param name="first">Functional groups of a molecule of the one part f [-], at least 2: 2 for a diepoxide.</param>
    /// <param name="second">Functional groups of a molecule of the other part g [-], at least 2: 4 for a diamine.</param>
    public static double Of(double ratio, double first, double second)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(ratio);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(ratio, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(first, 2);
        ArgumentOutOfRangeException.ThrowIfLessThan(second, 2);
        return 1 / Math.Sqrt(ratio * (first - 1) * (second - 1));
    }
}

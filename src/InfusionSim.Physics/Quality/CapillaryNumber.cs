namespace InfusionSim.Physics.Quality;

/// <summary>Capillary number of a flow front, modified by the contact angle [-]: the drag of the resin over the pull of the fibre bundles.</summary>
/// <remarks>
/// Ca* = μ v / (γ cos θ). Which of the two is stronger decides where air stays: a slow front leaves it between the bundles, which drink ahead, a fast
/// one inside them.
/// Source of the number and of the tie to voids: Patel, Rohatgi and Lee, Polym. Eng. Sci. 35 (1995) 837.
/// The number with the fewest voids is doubtful: publications put it anywhere in <see cref="PublishedFrom"/> to <see cref="PublishedTo"/>, a whole decade, for
/// glass most often at 2e-3 to 4e-3 (Rohatgi et al. 1996; Ruiz et al., Compos. Sci. Technol. 66 (2006) 475; Leclerc and Ruiz, Composites A 39 (2008) 1859;
/// LeBel et al. 2014; all from memory). So it is shown beside that range and judges nothing.
/// </remarks>
public static class CapillaryNumber
{
    /// <summary>Lower end of what publications name as best [-] (from memory, doubtful).</summary>
    public const double PublishedFrom = 1e-3;

    /// <summary>Upper end of what publications name as best [-] (from memory, doubtful).</summary>
    public const double PublishedTo = 1e-2;

    /// <summary>The number of a front [-].</summary>
    /// <param name="viscosity">Viscosity at the front [Pa·s], above 0.</param>
    /// <param name="speed">Speed of the front [m/s], at least 0.</param>
    /// <param name="wetting">How the resin wets the fibres.</param>
    public static double Of(double viscosity, double speed, Wetting wetting)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(viscosity);
        ArgumentOutOfRangeException.ThrowIfNegative(speed);
        ArgumentNullException.ThrowIfNull(wetting);
        return viscosity * speed / wetting.Pull;
    }

    /// <summary>Speed at which a front has a number [m/s].</summary>
    /// <param name="number">The number [-], at least 0.</param>
    /// <param name="viscosity">Viscosity at the front [Pa·s], above 0.</param>
    /// <param name="wetting">How the resin wets the fibres.</param>
    public static double SpeedFor(double number, double viscosity, Wetting wetting)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(number);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(viscosity);
        ArgumentNullException.ThrowIfNull(wetting);
        return number * wetting.Pull / viscosity;
    }
}

namespace InfusionSim.Planning.Mixing;

/// <summary>What a pot gives off to still air when nobody measured it.</summary>
/// <remarks>
/// The resin stands as deep as the pot is wide and gives off heat by its side and its surface, not by its bottom: 10 W/(m²K), free convection and
/// radiation together (from memory, textbooks of heat transfer give 5 to 25 for still air). A thin plastic cup loses this, an insulated pail less,
/// a shallow metal tray many times more.
/// </remarks>
public static class StillAirCooling
{
    /// <summary>Heat through an area for each degree of difference [W/(m²·K)].</summary>
    public const double Transfer = 10;

    /// <summary>Heat that leaves a pot for each degree that it is warmer than the shop [W/K].</summary>
    /// <param name="mass">Mass of resin in it [kg], at least 0.</param>
    /// <param name="density">Density of the resin [kg/m³], above 0.</param>
    public static double Of(double mass, double density)
    {
        // Volume π d³/4 as deep as wide; side π d², surface π d²/4.
        double width = Math.Cbrt(4 * mass / (Math.PI * density));
        return Transfer * 1.25 * Math.PI * width * width;
    }
}

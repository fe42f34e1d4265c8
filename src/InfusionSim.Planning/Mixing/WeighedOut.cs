namespace InfusionSim.Planning.Mixing;

/// <summary>The two components of one mix.</summary>
/// <param name="Resin">Mass of resin [kg].</param>
/// <param name="Hardener">Mass of hardener [kg].</param>
public sealed record WeighedOut(double Resin, double Hardener)
{
    /// <summary>Mass of both together [kg].</summary>
    public double Mixed => Resin + Hardener;
}

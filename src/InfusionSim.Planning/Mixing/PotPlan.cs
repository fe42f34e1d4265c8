namespace InfusionSim.Planning.Mixing;

/// <summary>What is mixed for one pot, and when it is poured.</summary>
/// <param name="Name">What the plan calls it, or the feed it belongs to.</param>
/// <param name="Drawn">Mass that is drawn from it [kg].</param>
/// <param name="Mixed">Mass that is mixed for it, reserve and rest included [kg].</param>
/// <param name="Pours">When each batch must be in the pot.</param>
/// <param name="EmptyTime">When all of it but the rest has been drawn while vents stay open [s]; null when it never is.</param>
/// <param name="Heat">How warm a batch gets in the pot; null where the kinetics or the temperature of the shop are not known.</param>
public sealed record PotPlan(string Name, double Drawn, double Mixed, IReadOnlyList<BatchPour> Pours, double? EmptyTime, PotHeat? Heat)
{
    /// <summary>Mass of one batch; all are alike [kg].</summary>
    public double Batch => Mixed / Pours.Count;

    /// <summary>What the plan says the pot holds [kg]; null where it does not.</summary>
    public double? Holds { get; init; }

    /// <summary>When what the pot holds has been drawn [s]; null where the plan does not say or it suffices.</summary>
    public double? RunsDryTime { get; init; }
}

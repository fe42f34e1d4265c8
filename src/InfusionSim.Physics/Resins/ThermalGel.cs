namespace InfusionSim.Physics.Resins;

/// <summary>A gel time measured at one temperature, used at others: it gels when ∫ dt/t_gel(T) reaches 1.</summary>
/// <remarks>
/// Exact where the reaction is one and its rate depends on temperature alone (a textbook argument: the cure at gel is the same). A gel time from a
/// cup is short of that in thin cloth, because a cup warms itself; the cup's is the cautious one.
/// </remarks>
/// <param name="GelTime">From mixing until it gels, at the law's reference [s], above 0.</param>
/// <param name="Law">How it changes with temperature.</param>
public sealed record ThermalGel(double GelTime, TemperatureLaw Law) : GelRule
{
    /// <inheritdoc/>
    public override double TimeFromMixing(TemperatureCourse? temperature, double mixToOpen)
    {
        if (temperature is null) return GelTime;
        if (temperature.IsLevel) return GelTime * Law.FactorAt(temperature, 0);
        return new ThermalAge(new(1 / GelTime, Law), temperature, mixToOpen).TimeOf(1) + mixToOpen;
    }
}

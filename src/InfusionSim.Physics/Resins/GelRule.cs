namespace InfusionSim.Physics.Resins;

/// <summary>When a resin gels.</summary>
public abstract record GelRule
{
    /// <summary>When it gels, from mixing [s]; +∞ when it never does.</summary>
    /// <param name="temperature">The temperatures it sees; null where nobody named one.</param>
    /// <param name="mixToOpen">From mixing until the first feed opens [s].</param>
    public abstract double TimeFromMixing(TemperatureCourse? temperature, double mixToOpen);
}

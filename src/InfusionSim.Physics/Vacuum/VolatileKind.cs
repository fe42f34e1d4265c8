namespace InfusionSim.Physics.Vacuum;

/// <summary>A component of a resin that turns to vapour at a deep vacuum.</summary>
public enum VolatileKind
{
    /// <summary>Styrene, the monomer of polyester and vinyl ester resins.</summary>
    Styrene,

    /// <summary>Water, drawn from the air by hardeners, cores and fibre.</summary>
    Water,
}

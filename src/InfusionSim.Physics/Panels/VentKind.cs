namespace InfusionSim.Physics.Panels;

/// <summary>What a vent lets through.</summary>
public enum VentKind
{
    /// <summary>Stays open when wet and passes resin from then on.</summary>
    Tube,

    /// <summary>Passes air and holds resin.</summary>
    Membrane,
}

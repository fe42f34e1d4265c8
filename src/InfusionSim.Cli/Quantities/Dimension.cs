namespace InfusionSim.Cli.Quantities;

/// <summary>What a number measures; decides which units may be typed for it.</summary>
public enum Dimension
{
    /// <summary>A plain number, a share or a ratio.</summary>
    Ratio,

    /// <summary>A length.</summary>
    Length,

    /// <summary>An area or a permeability.</summary>
    Area,

    /// <summary>A volume.</summary>
    Volume,

    /// <summary>An absolute pressure.</summary>
    Pressure,

    /// <summary>A difference between two pressures.</summary>
    PressureDifference,

    /// <summary>How much gas leaks in.</summary>
    Leak,

    /// <summary>A volume in a time.</summary>
    PumpSpeed,

    /// <summary>A viscosity.</summary>
    Viscosity,

    /// <summary>A time.</summary>
    Time,

    /// <summary>A density.</summary>
    Density,

    /// <summary>A mass.</summary>
    Mass,

    /// <summary>A mass over an area.</summary>
    ArealWeight,

    /// <summary>A temperature.</summary>
    Temperature,

    /// <summary>Heat given off for each degree of difference.</summary>
    Cooling,

    /// <summary>An energy for each mole.</summary>
    MolarEnergy,

    /// <summary>A heat for each mass.</summary>
    SpecificHeat,

    /// <summary>A heat for each mass and degree.</summary>
    HeatCapacity,

    /// <summary>A rate.</summary>
    Rate,

    /// <summary>A surface tension.</summary>
    SurfaceTension,

    /// <summary>An angle.</summary>
    Angle,
}

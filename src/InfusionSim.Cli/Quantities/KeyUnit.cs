namespace InfusionSim.Cli.Quantities;

/// <summary>Unit that a key of the plan carries in its name.</summary>
/// <param name="Dimension">What it measures.</param>
/// <param name="Symbol">How it is written after a number; empty for a ratio.</param>
/// <param name="Scale">Size of the unit in SI.</param>
public sealed record KeyUnit(Dimension Dimension, string Symbol, double Scale)
{
    // Longest endings first: "MbarAbs" before a shorter one that it ends with.
    private static readonly (string Ending, KeyUnit Unit)[] Endings =
    [
        ("MbarLPerS", new(Dimension.Leak, "mbar·L/s", 0.1)),
        ("M3PerH", new(Dimension.PumpSpeed, "m³/h", 1.0 / 3600)),
        ("minutes", new(Dimension.Time, "min", 60)),
        ("MnPerM", new(Dimension.SurfaceTension, "mN/m", 1e-3)),
        ("KgPerM3", new(Dimension.Density, "kg/m³", 1)),
        ("WPerK", new(Dimension.Cooling, "W/K", 1)),
        ("KjPerMol", new(Dimension.MolarEnergy, "kJ/mol", 1000)),
        ("JPerKgK", new(Dimension.HeatCapacity, "J/(kg·K)", 1)),
        ("JPerKg", new(Dimension.SpecificHeat, "J/kg", 1)),
        ("PerS", new(Dimension.Rate, "1/s", 1)),
        ("DegC", new(Dimension.Temperature, "°C", 1)),
        ("degC", new(Dimension.Temperature, "°C", 1)),
        ("GPerM2", new(Dimension.ArealWeight, "g/m²", 1e-3)),
        ("MbarAbs", new(Dimension.Pressure, "mbar absolute", 100)),
        ("Mbar", new(Dimension.PressureDifference, "mbar", 100)),
        ("Mm2", new(Dimension.Area, "mm²", 1e-6)),
        ("Cm3", new(Dimension.Volume, "cm³", 1e-6)),
        ("PaS", new(Dimension.Viscosity, "Pa·s", 1)),
        ("Min", new(Dimension.Time, "min", 60)),
        ("Deg", new(Dimension.Angle, "°", Math.PI / 180)),
        ("M2", new(Dimension.Area, "m²", 1)),
        ("Mm", new(Dimension.Length, "mm", 1e-3)),
        ("L", new(Dimension.Volume, "L", 1e-3)),
        ("M", new(Dimension.Length, "m", 1)),
        ("G", new(Dimension.Mass, "g", 1e-3)),
    ];

    private static readonly KeyUnit None = new(Dimension.Ratio, "", 1);

    /// <summary>Unit of a key.</summary>
    /// <param name="key">Key as a plan file writes it: viscosityPaS.</param>
    public static KeyUnit Of(string key)
    {
        foreach ((string ending, KeyUnit unit) in Endings)
            if (key.EndsWith(ending, StringComparison.Ordinal)) return unit;
        return None;
    }
}

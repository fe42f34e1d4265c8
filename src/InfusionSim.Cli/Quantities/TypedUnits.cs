namespace InfusionSim.Cli.Quantities;

/// <summary>Units that a person may type, with their size in SI.</summary>
/// <remarks>Sizes follow from the definitions of the SI brochure (BIPM, 9th ed. 2019, from memory); conventional millimetre and inch of mercury, the darcy, pound, ounce and yard from memory.</remarks>
public static class TypedUnits
{
    private static readonly Dictionary<string, double> Pressures = new()
    {
        ["pa"] = 1,
        ["hpa"] = 100,
        ["kpa"] = 1e3,
        ["mbar"] = 100,
        ["bar"] = 1e5,
        ["psi"] = 6894.757,
        ["torr"] = 133.3224,
        ["mmhg"] = 133.3224,
        ["inhg"] = 3386.389,
    };

    private static readonly Dictionary<Dimension, Dictionary<string, double>> Known = new()
    {
        [Dimension.Ratio] = new()
        {
            ["%"] = 0.01,
        },
        [Dimension.Length] = new()
        {
            ["mm"] = 1e-3,
            ["cm"] = 1e-2,
            ["m"] = 1,
            ["km"] = 1000,
            ["in"] = 0.0254,
            ["inch"] = 0.0254,
            ["\""] = 0.0254,
            ["ft"] = 0.3048,
        },
        [Dimension.Area] = new()
        {
            ["mm2"] = 1e-6,
            ["cm2"] = 1e-4,
            ["m2"] = 1,
            ["µm2"] = 1e-12,
            ["um2"] = 1e-12,
            ["darcy"] = 9.869233e-13,
        },
        [Dimension.Volume] = new()
        {
            ["mm3"] = 1e-9,
            ["cm3"] = 1e-6,
            ["ml"] = 1e-6,
            ["cl"] = 1e-5,
            ["dl"] = 1e-4,
            ["l"] = 1e-3,
            ["m3"] = 1,
        },
        [Dimension.Pressure] = Pressures,
        [Dimension.PressureDifference] = Pressures,
        [Dimension.Leak] = new()
        {
            ["mbarl/s"] = 0.1,
            ["pam3/s"] = 1,
            ["pal/s"] = 1e-3,
            ["torrl/s"] = 0.1333224,
            ["sccm"] = 1.68875e-3,
        },
        [Dimension.PumpSpeed] = new()
        {
            ["m3/h"] = 1.0 / 3600,
            ["l/min"] = 1e-3 / 60,
            ["l/s"] = 1e-3,
            ["cfm"] = 4.719474e-4,
        },
        [Dimension.Viscosity] = new()
        {
            ["pas"] = 1,
            ["mpas"] = 1e-3,
            ["cp"] = 1e-3,
            ["cps"] = 1e-3,
            ["p"] = 0.1,
        },
        [Dimension.Time] = new()
        {
            ["s"] = 1,
            ["sec"] = 1,
            ["min"] = 60,
            ["h"] = 3600,
            ["hours"] = 3600,
            ["hour"] = 3600,
        },
        [Dimension.Density] = new()
        {
            ["kg/m3"] = 1,
            ["g/cm3"] = 1000,
            ["g/ml"] = 1000,
            ["kg/l"] = 1000,
        },
        [Dimension.Mass] = new()
        {
            ["g"] = 1e-3,
            ["kg"] = 1,
            ["lb"] = 0.45359237,
            ["oz"] = 0.028349523125,
        },
        [Dimension.ArealWeight] = new()
        {
            ["g/m2"] = 1e-3,
            ["gsm"] = 1e-3,
            ["kg/m2"] = 1,
            ["oz/yd2"] = 0.0339057475,
        },
        [Dimension.Temperature] = new()
        {
            ["°c"] = 1,
            ["degc"] = 1,
            ["c"] = 1,
        },
        [Dimension.Cooling] = new()
        {
            ["w/k"] = 1,
        },
        [Dimension.MolarEnergy] = new()
        {
            ["kj/mol"] = 1000,
            ["j/mol"] = 1,
            ["kcal/mol"] = 4184,
        },
        [Dimension.SpecificHeat] = new()
        {
            ["j/kg"] = 1,
            ["kj/kg"] = 1000,
            ["j/g"] = 1000,
        },
        [Dimension.HeatCapacity] = new()
        {
            ["j/kgk"] = 1,
            ["kj/kgk"] = 1000,
            ["j/gk"] = 1000,
        },
        [Dimension.Rate] = new()
        {
            ["1/s"] = 1,
            ["/s"] = 1,
            ["/min"] = 1.0 / 60,
        },
        [Dimension.SurfaceTension] = new()
        {
            ["mn/m"] = 1e-3,
            ["n/m"] = 1,
            ["dyn/cm"] = 1e-3,
        },
        [Dimension.Angle] = new()
        {
            ["°"] = Math.PI / 180,
            ["deg"] = Math.PI / 180,
            ["rad"] = 1,
        },
    };

    /// <summary>Size of a typed unit in SI, or null when it is none of this dimension.</summary>
    /// <param name="dimension">What is measured.</param>
    /// <param name="typed">The unit as typed.</param>
    public static double? Find(Dimension dimension, string typed) =>
        Known[dimension].TryGetValue(Plain(typed), out double size) ? size : null;

    /// <summary>What a unit measures, or null when no dimension knows it.</summary>
    /// <param name="typed">The unit as typed.</param>
    public static Dimension? DimensionOf(string typed)
    {
        string plain = Plain(typed);
        foreach ((Dimension dimension, Dictionary<string, double> units) in Known)
            if (units.ContainsKey(plain)) return dimension;
        return null;
    }

    /// <summary>Units to offer for a dimension, in words.</summary>
    /// <param name="dimension">What is measured.</param>
    public static string Offer(Dimension dimension) => dimension switch
    {
        Dimension.Length => "mm, cm, m, in",
        Dimension.Area => "m2, mm2, cm2, darcy",
        Dimension.Volume => "cm3, ml, l",
        Dimension.Pressure => "mbar, bar, Pa, kPa, inHg, mmHg, psi; with (g) behind it for a gauge reading",
        Dimension.PressureDifference => "mbar, bar, Pa, kPa, inHg, mmHg, psi",
        Dimension.Leak => "mbar.l/s, Pa.m3/s, sccm",
        Dimension.PumpSpeed => "m3/h, l/min, l/s, cfm",
        Dimension.Viscosity => "Pa.s, mPa.s, cP",
        Dimension.Time => "min, s, h",
        Dimension.Density => "kg/m3, g/cm3, kg/l",
        Dimension.Mass => "g, kg, lb, oz",
        Dimension.ArealWeight => "g/m2, kg/m2, oz/yd2",
        Dimension.Temperature => "degC",
        Dimension.Cooling => "W/K",
        Dimension.MolarEnergy => "kJ/mol, J/mol, kcal/mol",
        Dimension.SpecificHeat => "J/kg, kJ/kg, J/g",
        Dimension.HeatCapacity => "J/kgK, kJ/kgK, J/gK",
        Dimension.Rate => "/s, /min",
        Dimension.SurfaceTension => "mN/m, N/m, dyn/cm",
        Dimension.Angle => "deg, rad",
        _ => "a plain number or %",
    };

    // "mPa·s", "mPa.s", "mPa*s", "mPa s" and "mPas" are one unit; so are "mm²" and "mm2".
    private static string Plain(string typed) => typed
        .Replace("²", "2", StringComparison.Ordinal)
        .Replace("³", "3", StringComparison.Ordinal)
        .Replace("^", "", StringComparison.Ordinal)
        .Replace("·", "", StringComparison.Ordinal)
        .Replace(".", "", StringComparison.Ordinal)
        .Replace("*", "", StringComparison.Ordinal)
        .Replace(" ", "", StringComparison.Ordinal)
        .Replace("μ", "µ", StringComparison.Ordinal)
        .ToLowerInvariant();
}

using Google.Protobuf.Reflection;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>The range of every number that a request can hold, by the full name of its field.</summary>
/// <remarks>
/// The ranges are wide on purpose: they catch a wrong unit or a slipped decimal point, not an unusual panel. They are
/// our own judgement, from the ranges of cloth and resin in common practice with one to two powers of ten on either side.
/// </remarks>
public static class NumberRules
{
    private const string Package = "infusionsim.v1.";

    private static readonly NumberRule Coordinate = new(-100_000, 100_000, "mm")
    {
        IsNeeded = true,
        Example = "250",
        Advice = (_, _) => "Lengths are millimetres; no panel is longer than 200 m here.",
    };

    private static readonly NumberRule PermeabilityInPlane = new(1e-16, 1e-6, "m²") { Advice = AdviseOnPermeability };

    private static readonly NumberRule ContactWidth = new(0.5, 500, "mm") { Advice = AdviseOnLength };

    private static readonly NumberRule LayerPorosity = new(0.05, 0.98, "") { IsNeeded = true, Example = "0.8", Advice = AdviseOnFraction };

    private static readonly NumberRule Bore = new(0.5, 100, "mm") { Advice = AdviseOnLength };

    private static readonly NumberRule Parts = new(0.05, 1000, "")
    {
        Advice = static (value, _) => value is > 0 and < 0.05 ? $"It is parts of hardener to 100 of resin: 1 : {Numbers.Say(value)} is {Numbers.Say(value * 100)}." : "It is parts of hardener to 100 of resin.",
    };

    private static readonly NumberRule OpenFraction = new(0.001, 1, "")
    {
        Advice = static (value, _) => value is > 1 and <= 100 ? "Give a fraction, not per cent." : "It is the share of the hose's conductance that the clamp leaves; shuts shuts it.",
    };

    private static readonly NumberRule Angle = new(-360, 360, "°");

    private static readonly NumberRule Pitch = new(0.2, 1000, "mm") { IsNeeded = true, Example = "20", Advice = AdviseOnLength };

    private static readonly NumberRule Viscosity = new(0.001, 100, "Pa·s") { Example = "0.3", Advice = (value, _) => value > 0 ? $"{Numbers.Say(value)} mPa·s is {Numbers.Say(value / 1000)}." : null };

    private static readonly NumberRule Temperature = new(-20, 200, "°C") { Advice = static (value, _) => value is > 200 and < 530 ? $"It is degrees Celsius: {Numbers.Say(value)} K is {Numbers.Say(value - 273.15)}." : "It is degrees Celsius." };

    private static readonly NumberRule Activation = new(1, 400, "kJ/mol") { Advice = static (value, _) => value is > 400 and <= 400_000 ? $"{Numbers.Say(value)} J/mol is {Numbers.Say(value / 1000)}." : null };

    private static readonly NumberRule Factor = new(0, 1e40, "1/s") { Advice = static (_, _) => "It is a rate per second: one per minute is a sixtieth of it." };

    private static readonly Dictionary<string, NumberRule> Rules = new(StringComparer.Ordinal)
    {
        ["Point.x_mm"] = Coordinate,
        ["Point.y_mm"] = Coordinate,
        ["Preform.permeability_factor"] = new(1, 10, "") { Advice = (_, _) => "It is a factor: 1.5 means that two shots in three lie between K/1.5 and K·1.5." },
        ["Zone.thickness_mm"] = new(0.05, 200, "mm") { IsNeeded = true, IsSpared = static zone => zone is Zone { LayUp: not null }, Example = "3", Advice = AdviseOnLength },
        ["Zone.porosity"] = new(0.05, 0.98, "") { Advice = AdviseOnFraction },
        ["Zone.fibre_volume_fraction"] = new(0.02, 0.95, "") { Advice = AdviseOnFraction },
        ["Permeability.k1_m2"] = PermeabilityInPlane with { IsNeeded = true, Example = "1e-10" },
        ["Permeability.k2_m2"] = PermeabilityInPlane,
        ["Permeability.k3_m2"] = new(1e-18, 1e-6, "m²") { Advice = AdviseOnPermeability },
        ["Permeability.angle_deg"] = Angle,
        ["Ply.count"] = new(1, 200, ""),
        ["Ply.angle_deg"] = Angle,
        ["Ply.thickness_mm"] = new(0.05, 50, "mm") { IsNeeded = true, IsSpared = static ply => ply is Ply { HasArealWeightGPerM2: true } or Ply { HasFibreDensityKgPerM3: true }, Example = "0.6", Advice = AdviseOnLength },
        ["Ply.areal_weight_g_per_m2"] = new(5, 20_000, "g/m²")
        {
            Advice = static (value, _) => value is > 0.005 and < 5 ? $"{Numbers.Say(value)} kg/m² is {Numbers.Say(value * 1000)}." : "It is the weight of the fibre in one ply, as the roll says.",
        },
        ["Ply.fibre_density_kg_per_m3"] = new(500, 20_000, "kg/m³") { Advice = AdviseOnDensity },
        ["FlowMesh.thickness_mm"] = new(0.05, 50, "mm") { IsNeeded = true, Example = "1", Advice = AdviseOnLength },
        ["FlowMesh.porosity"] = LayerPorosity,
        ["PeelPly.thickness_mm"] = new(0.05, 5, "mm") { IsNeeded = true, Example = "0.2", Advice = AdviseOnLength },
        ["PeelPly.porosity"] = LayerPorosity with { Example = "0.5" },
        ["Core.tool_skin_fraction"] = new(0.05, 0.95, "") { Advice = static (value, _) => value is > 1 and <= 100 ? "Give a fraction, not per cent." : "It is the share of the lay-up under the core: 0.5 is half." },
        ["Core.thickness_mm"] = new(0.5, 200, "mm") { IsNeeded = true, Example = "15", Advice = AdviseOnLength },
        ["Core.porosity"] = new(0.001, 0.98, "") { Advice = AdviseOnFraction },
        ["Grooves.width_mm"] = new(0.1, 50, "mm") { IsNeeded = true, Example = "2", Advice = AdviseOnLength },
        ["Grooves.depth_mm"] = new(0.1, 200, "mm") { IsNeeded = true, Example = "2", Advice = AdviseOnLength },
        ["Grooves.pitch_mm"] = Pitch,
        ["Grooves.angle_deg"] = Angle,
        ["Holes.diameter_mm"] = new(0.1, 50, "mm") { IsNeeded = true, Example = "3", Advice = AdviseOnLength },
        ["Holes.pitch_mm"] = Pitch,
        ["Hose.bore_mm"] = Bore with { IsNeeded = true, Example = "8" },
        ["Hose.length_m"] = new(0.01, 50, "m")
        {
            IsNeeded = true,
            Example = "2",
            Advice = static (value, _) => value is > 50 and <= 50_000 ? $"It is metres: {Numbers.Say(value)} mm is {Numbers.Say(value / 1000)}." : "It is metres.",
        },
        ["Feed.bore_mm"] = Bore,
        ["Vent.bore_mm"] = Bore,
        ["Pot.level_mm"] = new(-20_000, 20_000, "mm") { Advice = static (_, _) => "It is the height of the resin above the feed, below 0 when the pot stands lower." },
        ["Slope.uphill_deg"] = Angle,
        ["Slope.angle_deg"] = new(0, 90, "°")
        {
            IsNeeded = true,
            Example = "20",
            Advice = static (value, _) => value < 0 ? "It is never negative: slope.uphillDeg says which way the panel rises." : "90 is upright.",
        },
        ["Gap.width_mm"] = new(0.05, 100, "mm") { IsNeeded = true, Example = "2", Advice = AdviseOnLength },
        ["Gap.height_mm"] = new(0.05, 200, "mm") { Advice = AdviseOnLength },
        ["Feed.open_fraction"] = OpenFraction,
        ["Vent.open_fraction"] = OpenFraction,
        ["Moment.at_min"] = new(0, 10_080, "min") { Advice = static (_, _) => "It counts from the opening of the first feed, in minutes." },
        ["ClampStep.open_fraction"] = OpenFraction with { Least = 0, IsNeeded = true, Example = "0.5" },
        ["BagStep.pressure_mbar_abs"] = new(0, 1100, "mbar") { IsNeeded = true, Example = "500", Advice = AdviseOnBagPressure },
        ["Pot.mass_g"] = new(1, 1e7, "g") { Advice = static (value, _) => value is > 0 and < 1 ? $"It is grams: {Numbers.Say(value)} kg is {Numbers.Say(value * 1000)}." : "It is the resin in the pot, in grams." },
        ["Feed.contact_width_mm"] = ContactWidth,
        ["Vent.contact_width_mm"] = ContactWidth,
        ["Resin.viscosity_pa_s"] = Viscosity with { IsNeeded = true, IsSpared = static card => card is Resin { ViscosityTemperatures.Count: > 0 } or Resin { ViscosityCurve: not null } },
        ["Resin.gel_time_min"] = new(0.1, 10_080, "min") { Advice = (_, _) => "It counts from mixing, in minutes." },
        ["Resin.viscosity_at_deg_c"] = Temperature,
        ["Resin.gel_time_at_deg_c"] = Temperature,
        ["Resin.gel_time_mass_g"] = new(0.1, 100_000, "g"),
        ["Resin.gel_time_activation_kj_per_mol"] = Activation,
        ["Resin.pot_life_min"] = new(0.1, 10_080, "min") { Advice = (_, _) => "It counts from mixing, in minutes." },
        ["Resin.viscosity_activation_kj_per_mol"] = Activation,
        ["ViscosityPoint.deg_c"] = Temperature with { IsNeeded = true, Example = "25" },
        ["ViscosityPoint.viscosity_pa_s"] = Viscosity with { IsNeeded = true },
        ["ViscosityCurve.at_deg_c"] = Temperature,
        ["CurvePoint.at_min"] = new(0, 10_080, "min") { IsNeeded = true, Example = "20", Advice = (_, _) => "It counts from mixing, in minutes." },
        ["CurvePoint.viscosity_pa_s"] = Viscosity with { Most = 10_000, IsNeeded = true },
        ["ViscosityRise.doubling_min"] = new(0.1, 10_080, "min") { Advice = (_, _) => "It is the time in which the viscosity doubles, in minutes." },
        ["ViscosityRise.at_deg_c"] = Temperature,
        ["ViscosityRise.factor_per_s"] = Factor,
        ["ViscosityRise.activation_kj_per_mol"] = Activation,
        ["CureKinetics.first_factor_per_s"] = Factor,
        ["CureKinetics.first_activation_kj_per_mol"] = Activation,
        ["CureKinetics.second_factor_per_s"] = Factor,
        ["CureKinetics.second_activation_kj_per_mol"] = Activation,
        ["CureKinetics.self_order"] = new(0, 5, ""),
        ["CureKinetics.rest_order"] = new(0.1, 5, ""),
        ["CureKinetics.start_conversion"] = new(0, 0.5, "") { Advice = AdviseOnCure },
        ["CureKinetics.gel_conversion"] = new(0.001, 0.98, "") { IsNeeded = true, Example = "0.6", Advice = AdviseOnCure },
        ["CureKinetics.handling_conversion"] = new(0.001, 0.999, "") { Advice = AdviseOnCure },
        ["CureKinetics.heat_of_reaction_j_per_kg"] = new(1000, 2e6, "J/kg") { Advice = static (value, _) => value is > 10 and < 1000 ? $"{Numbers.Say(value)} kJ/kg is {Numbers.Say(value * 1000)}." : null },
        ["CureKinetics.heat_capacity_j_per_kg_k"] = new(500, 5000, "J/(kg·K)") { Advice = static (value, _) => value is > 0.5 and < 5 ? $"{Numbers.Say(value)} kJ/(kg·K) is {Numbers.Say(value * 1000)}." : null },
        ["CureKinetics.fitted_from_deg_c"] = Temperature,
        ["CureKinetics.fitted_to_deg_c"] = Temperature,
        ["Thickening.exponent"] = new(0, 20, "") { IsNeeded = true, Example = "1.5" },
        ["Thickening.exponent_per_conversion"] = new(-20, 20, ""),
        ["ShopTemperature.at_min"] = new(0, 100_000, "min") { IsNeeded = true, Example = "30", Advice = (_, _) => "It counts from the opening of the first feed, in minutes." },
        ["ShopTemperature.temperature_deg_c"] = Temperature with { IsNeeded = true, Example = "25" },
        ["Resin.mix_to_open_min"] = new(0, 10_080, "min") { Advice = (_, _) => "It is the time from mixing until the first feed opens, in minutes." },
        ["Resin.density_kg_per_m3"] = new(500, 3000, "kg/m³")
        {
            IsNeeded = true,
            Example = "1100",
            Advice = AdviseOnDensity,
        },
        ["MixRatio.parts_by_mass"] = Parts,
        ["MixRatio.parts_by_volume"] = Parts,
        ["MixRatio.resin_density_kg_per_m3"] = new(500, 3000, "kg/m³") { Advice = AdviseOnDensity },
        ["MixRatio.hardener_density_kg_per_m3"] = new(500, 3000, "kg/m³") { Advice = AdviseOnDensity },
        ["Mix.reserve_fraction"] = new(0, 5, "") { Advice = static (value, _) => value is > 5 and <= 500 ? "Give a fraction, not per cent: 15 % is 0.15." : "It is a share of what is drawn: 0.15 mixes 15 % more." },
        ["Mix.pot_rest_g"] = new(0, 100_000, "g") { Advice = static (_, _) => "It is what stays in one pot." },
        ["Mix.largest_batch_g"] = new(10, 1e6, "g") { Advice = static (_, _) => "It is resin and hardener together, in grams." },
        ["Mix.vents_open_after_min"] = new(0, 10_080, "min") { Advice = static (_, _) => "It counts from the moment the panel is full." },
        ["Mix.pot_cooling_w_per_k"] = new(0, 10_000, "W/K") { Advice = static (_, _) => "A cup of 100 g gives off about 0.1 W/K, a bucket of 10 kg about 2.5." },
        ["Mix.warmest_pot_deg_c"] = new(0, 150, "°C") { Advice = static (_, _) => "Above about 60 °C most pots are on the way to smoke." },
        ["Resin.surface_tension_mn_per_m"] = new(5, 100, "mN/m") { Advice = static (value, _) => value is > 0.005 and < 0.1 ? $"{Numbers.Say(value)} N/m is {Numbers.Say(value * 1000)}." : "Resins mostly lie between 25 and 50." },
        ["Resin.contact_angle_deg"] = new(0, 85, "°") { Advice = static (_, _) => "Towards 90° the resin no longer wets the fibre and the number says nothing." },
        ["ResinVolatile.mole_fraction"] = new(0, 1, "")
        {
            IsNeeded = true,
            Example = "0.5",
            Advice = static (value, _) => value is > 1 and <= 100 ? "Give a fraction of the molecules, not per cent." : null,
        },
        ["Shop.temperature_deg_c"] = Temperature,
        ["Shop.altitude_m"] = new(-430, 7000, "m") { Advice = static (_, _) => "It is the height of the shop above the sea, in metres." },
        ["Bag.pressure_mbar_abs"] = new(0, 1100, "mbar")
        {
            IsNeeded = true,
            IsSpared = static bag => bag is Bag { Pump: not null } known && (known.HasLeakMbarLPerS || known.DropTest is not null),
            Example = "20",
            Advice = AdviseOnBagPressure,
        },
        ["Bag.ambient_mbar_abs"] = new(400, 1100, "mbar") { Advice = AdviseOnAmbient },
        ["Bag.leak_mbar_l_per_s"] = new(0, 1000, "mbar·L/s") { Advice = static (_, _) => "It is volume times rise over time: 20 L that rise by 8 mbar in 10 min leak 0.267." },
        ["DropTest.rise_mbar"] = new(0, 1100, "mbar")
        {
            IsNeeded = true,
            Example = "8",
            Advice = static (value, _) => value < 0 ? "A pressure that falls with the pump shut off is a gauge that settles: wait and test again." : "It is how far the pressure rose, not where it stood.",
        },
        ["DropTest.minutes"] = new(0.1, 10_080, "min") { IsNeeded = true, Example = "10" },
        ["DropTest.volume_l"] = new(0.01, 100_000, "L")
        {
            IsNeeded = true,
            Example = "20",
            Advice = static (_, _) => "It is all that was closed in, in litres: pores of the cloth, folds of the bag, hoses and catch pot.",
        },
        ["Pump.speed_m3_per_h"] = new(0.01, 10_000, "m³/h")
        {
            IsNeeded = true,
            Example = "4",
            Advice = static (value, _) => $"{Numbers.Say(value)} L/min is {Numbers.Say(Numbers.Rounded(value * 0.06, 3))} m³/h.",
        },
        ["Pump.lowest_mbar_abs"] = new(0, 900, "mbar") { IsNeeded = true, Example = "1", Advice = static (_, _) => "It is absolute: what the pump comes down to with its suction side closed." },
        ["Goals.largest_dry_spot_mm2"] = new(0, 1e9, "mm²"),
        ["Goals.smallest_gel_margin_ratio"] = new(0, 100, "") { Advice = (_, _) => "It is time to gel over time to fill: 1.5 asks for half as much time again." },
        ["Goals.most_resin_out_cm3"] = new(0, 1e9, "cm³"),
        ["Resolution.cell_mm"] = new(0.01, 1000, "mm") { Advice = AdviseOnLength },
        ["Resolution.sub_layers"] = new(1, 20, "") { Advice = static (_, _) => "It is how many layers the lay-up is cut into through its thickness; 3 to 5 are enough beside a flow mesh." },
        ["WatchFillRequest.moments"] = new(1, Requests.RequestLimits.MostMoments, ""),
        ["WatchFillRequest.at_time_s"] = new(0, 1e8, "s") { Advice = (_, _) => "Times count from the opening of the first feed." },
    };

    /// <summary>The rule of a field.</summary>
    /// <param name="field">A field that holds a number.</param>
    /// <exception cref="KeyNotFoundException">When somebody added a field without its range.</exception>
    public static NumberRule Of(FieldDescriptor field)
    {
        ArgumentNullException.ThrowIfNull(field);
        return Find(field) ?? throw new KeyNotFoundException($"{field.FullName} has no range; add it to {nameof(NumberRules)}.");
    }

    /// <summary>The rule of a field, or null when it has none.</summary>
    /// <param name="field">A field that holds a number.</param>
    public static NumberRule? Find(FieldDescriptor field)
    {
        ArgumentNullException.ThrowIfNull(field);
        return field.FullName.StartsWith(Package, StringComparison.Ordinal) ? Rules.GetValueOrDefault(field.FullName[Package.Length..]) : null;
    }

    private static string? AdviseOnLength(double value, InfusionPlan? plan) =>
        value is > 0 and < 0.5 ? $"Lengths are millimetres: {Numbers.Say(value)} m is {Numbers.Say(value * 1000)}." : "Lengths are millimetres.";

    private static string? AdviseOnDensity(double value, InfusionPlan? plan) =>
        value is > 0.5 and < 20 ? $"{Numbers.Say(value)} g/cm³ is {Numbers.Say(value * 1000)}." : null;

    private static string? AdviseOnFraction(double value, InfusionPlan? plan) =>
        value is > 1 and <= 100 ? "Give a fraction, not per cent." : "It is the share of the thickness: 0.5 is half.";

    private static string? AdviseOnCure(double value, InfusionPlan? plan) =>
        value is > 1 and <= 100 ? "Give a fraction, not per cent." : "It is a degree of cure: 0 is freshly mixed, 1 is fully cured.";

    private static string? AdviseOnPermeability(double value, InfusionPlan? plan) =>
        value is > 1e-6 and < 1 ? $"{Numbers.Say(value)} mm² is {Numbers.Say(value * 1e-6)}." : "Cloth under a bag mostly lies between 1e-12 and 1e-9.";

    private static string? AdviseOnBagPressure(double value, InfusionPlan? plan)
    {
        double ambient = PlanDefaults.AmbientMbarAbs(plan);
        if (value < 0 && value > -2 && ambient + 1000 * value >= 0)
            return $"That reads like a gauge in bar: with {Numbers.Say(ambient)} mbar of air the absolute pressure is {Numbers.Say(ambient + 1000 * value)} mbar.";
        if (value < 0 && ambient + value >= 0)
            return $"That reads like a gauge: with {Numbers.Say(ambient)} mbar of air the absolute pressure is {Numbers.Say(ambient + value)} mbar.";
        if (value < 0) return "It is absolute: 0 is a perfect vacuum, the air in the shop is about 1013.";
        return value is > 1100 and < 110_000 ? $"{Numbers.Say(value)} Pa is {Numbers.Say(value / 100)} mbar." : null;
    }

    private static string? AdviseOnAmbient(double value, InfusionPlan? plan)
    {
        if (value is > 0.4 and < 1.2) return $"{Numbers.Say(value)} bar is {Numbers.Say(value * 1000)} mbar.";
        return value is > 40_000 and < 110_000 ? $"{Numbers.Say(value)} Pa is {Numbers.Say(value / 100)} mbar." : "At sea level it is about 1013, at 2000 m about 795.";
    }
}

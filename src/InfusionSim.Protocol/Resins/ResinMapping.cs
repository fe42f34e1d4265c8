using InfusionSim.Physics.Resins;
using InfusionSim.Protocol.Units;
using Contract = InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Resins;

/// <summary>Turns a checked resin card into what the physics takes.</summary>
public static class ResinMapping
{
    /// <summary>Heat capacity of a mixed resin where the card names none [J/(kg·K)] (from memory: 1700 to 2100).</summary>
    public const double HeatCapacityJPerKgK = 1900;

    /// <summary>Maps the resin of a sound plan, with the temperatures it sees.</summary>
    /// <param name="plan">The plan, with its defaults.</param>
    public static Resin ToResin(Contract.InfusionPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        Contract.Resin card = plan.Resin;
        TemperatureCourse? course = TemperatureMapping.ToCourse(plan.Shop);
        CureKinetics? kinetics = card.Kinetics is null ? null : ToKinetics(card.Kinetics);
        return new Resin(ToViscosity(card, course, kinetics), ToGel(card, course, kinetics), UnitConversion.SecondsFromMin(card.MixToOpenMin), card.DensityKgPerM3)
        {
            Temperature = course,
            Kinetics = kinetics,
        };
    }

    /// <summary>The line through the card's viscosities over temperature; null where it has none.</summary>
    /// <param name="card">The card; sound.</param>
    internal static ViscosityFit? ToFit(Contract.Resin card) => card.ViscosityTemperatures.Count == 0 ? null : ViscosityFit.Of(
        [.. card.ViscosityTemperatures.Select(row => UnitConversion.KelvinFromDegC(row.DegC))], [.. card.ViscosityTemperatures.Select(row => row.ViscosityPaS)]);

    private static ViscosityModel ToViscosity(Contract.Resin card, TemperatureCourse? course, CureKinetics? kinetics)
    {
        if (card.ViscosityCurve is Contract.ViscosityCurve curve)
            return new MeasuredViscosity([.. curve.Points.Select(point => UnitConversion.SecondsFromMin(point.AtMin))], [.. curve.Points.Select(point => point.ViscosityPaS)]);
        ThermalViscosity start = ToFit(card)?.Model ?? new(
            card.ViscosityPaS,
            TemperatureMapping.ToLaw(card.HasViscosityActivationKjPerMol ? card.ViscosityActivationKjPerMol : null, card.HasViscosityAtDegC ? card.ViscosityAtDegC : null, course));
        if (card.ViscosityRise is Contract.ViscosityRise rise) return new DualArrheniusViscosity(start, ToRate(rise, course));
        if (kinetics is not null && card.Kinetics.Thickening is Contract.Thickening thickening)
            return new CastroMacoskoViscosity(start, kinetics, thickening.Exponent, thickening.ExponentPerConversion);
        return course is null ? new ConstantViscosity(start.Viscosity) : start;
    }

    private static ThermalRate ToRate(Contract.ViscosityRise rise, TemperatureCourse? course)
    {
        if (rise.HasFactorPerS) return ThermalRate.Of(new ArrheniusRate(rise.FactorPerS, UnitConversion.JPerMolFromKjPerMol(rise.ActivationKjPerMol)), course!.At(0));
        return new ThermalRate(
            Math.Log(2) / UnitConversion.SecondsFromMin(rise.DoublingMin),
            TemperatureMapping.ToLaw(rise.HasActivationKjPerMol ? rise.ActivationKjPerMol : null, rise.HasAtDegC ? rise.AtDegC : null, course));
    }

    private static GelRule ToGel(Contract.Resin card, TemperatureCourse? course, CureKinetics? kinetics)
    {
        List<GelRule> rules = [];
        if (StatedGelMin(card) is double minutes)
        {
            double gelTime = UnitConversion.SecondsFromMin(minutes);
            rules.Add(course is null ? new StatedGel(gelTime) : new ThermalGel(gelTime, TemperatureMapping.ToLaw(
                card.HasGelTimeActivationKjPerMol ? card.GelTimeActivationKjPerMol : null, card.HasGelTimeAtDegC ? card.GelTimeAtDegC : null, course)));
        }

        if (kinetics is not null) rules.Add(new GelAtConversion(kinetics));
        return rules.Count == 1 ? rules[0] : new EarliestGel(rules);
    }

    /// <summary>Gel time that the card states, or its pot life in place of it [min]; null where it states neither.</summary>
    /// <param name="card">The card.</param>
    internal static double? StatedGelMin(Contract.Resin card) => card.HasGelTimeMin ? card.GelTimeMin : card.HasPotLifeMin ? card.PotLifeMin : null;

    private static CureKinetics ToKinetics(Contract.CureKinetics kinetics) => new(
        new(kinetics.FirstFactorPerS, UnitConversion.JPerMolFromKjPerMol(kinetics.FirstActivationKjPerMol)),
        new(kinetics.SecondFactorPerS, UnitConversion.JPerMolFromKjPerMol(kinetics.SecondActivationKjPerMol)),
        kinetics.HasSelfOrder ? kinetics.SelfOrder : 1,
        kinetics.HasRestOrder ? kinetics.RestOrder : 1,
        kinetics.StartConversion,
        kinetics.GelConversion)
    {
        HandlingConversion = kinetics.HasHandlingConversion ? kinetics.HandlingConversion : null,
        Heat = kinetics.HasHeatOfReactionJPerKg ? new(kinetics.HeatOfReactionJPerKg, kinetics.HasHeatCapacityJPerKgK ? kinetics.HeatCapacityJPerKgK : HeatCapacityJPerKgK) : null,
    };
}

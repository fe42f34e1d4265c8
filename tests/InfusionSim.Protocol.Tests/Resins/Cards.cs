using System.Text;
using InfusionSim.Protocol.Json;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.Tests.Plans;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Tests.Resins;

/// <summary>Resin cards as JSON, invented, on the straight strip.</summary>
internal static class Cards
{
    public const string Plain = """{ "viscosityPaS": 0.3, "gelTimeMin": 60, "densityKgPerM3": 1100 }""";

    public const string Table = """{ "viscosityTemperatures": [ {"degC":15,"viscosityPaS":0.604111}, {"degC":25,"viscosityPaS":0.3}, {"degC":40,"viscosityPaS":0.114165} ], "gelTimeMin": 60, "densityKgPerM3": 1100 }""";

    public const string Curve = """{ "viscosityCurve": { "points": [ {"atMin":0,"viscosityPaS":0.3}, {"atMin":20,"viscosityPaS":0.4}, {"atMin":50,"viscosityPaS":2} ] }, "densityKgPerM3": 1100 }""";

    public const string Rise = """{ "viscosityPaS": 0.3, "viscosityAtDegC": 25, "viscosityActivationKjPerMol": 50, "viscosityRise": { "factorPerS": 1e6, "activationKjPerMol": 55 }, "gelTimeMin": 300, "densityKgPerM3": 1100 }""";

    public const string Kinetics = """
        { "viscosityPaS": 0.3, "viscosityAtDegC": 25, "viscosityActivationKjPerMol": 50, "densityKgPerM3": 1100, "source": "invented",
          "kinetics": { "firstFactorPerS": 1e5, "firstActivationKjPerMol": 55, "secondFactorPerS": 2e5, "secondActivationKjPerMol": 50, "restOrder": 1.5,
                        "gelConversion": 0.577, "handlingConversion": 0.9, "thickening": { "exponent": 1.5, "exponentPerConversion": 1 },
                        "heatOfReactionJPerKg": 450000, "fittedFromDegC": 15, "fittedToDegC": 60 } }
        """;

    public static Resin Of(string json)
    {
        JsonReading<Resin> reading = MessageReader.Read<Resin>(Encoding.UTF8.GetBytes(json), "resin card");
        reading.Faults.ShouldBeEmpty();
        return reading.Message;
    }

    public static InfusionPlan On(string json, double? degC = null, Action<Resin>? change = null) => StraightStrip.With(plan =>
    {
        plan.Resin = Of(json);
        change?.Invoke(plan.Resin);
        if (degC is double celsius) plan.Shop = new Shop { TemperatureDegC = celsius };
    });

    public static FillInputs Inputs(InfusionPlan plan)
    {
        PlanCheck check = PlanChecker.Check(plan);
        check.Faults.Select(fault => fault.Text).ShouldBeEmpty();
        return PlanMapping.ToInputs(check);
    }

    public static Shop Course(params (double AtMin, double DegC)[] rows)
    {
        var shop = new Shop();
        shop.Temperatures.AddRange(rows.Select(row => new ShopTemperature { AtMin = row.AtMin, TemperatureDegC = row.DegC }));
        return shop;
    }
}

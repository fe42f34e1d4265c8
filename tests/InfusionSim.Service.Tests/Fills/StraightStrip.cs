using System.Text;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Service.Tests.Fills;

/// <summary>A strip of 600 × 400 mm fed along its left edge, with a vent along its right edge.</summary>
internal static class StraightStrip
{
    public const string Json = """
        {
          "title": "Straight strip",
          "preform": {
            "outline": { "points": [ {"xMm":0,"yMm":0}, {"xMm":600,"yMm":0}, {"xMm":600,"yMm":400}, {"xMm":0,"yMm":400} ] },
            "zones": [ { "name": "skin", "thicknessMm": 3, "porosity": 0.5, "permeability": { "k1M2": 1e-10 } } ] },
          "feeds": [ { "name": "F1", "path": { "points": [ {"xMm":0,"yMm":0}, {"xMm":0,"yMm":400} ] } } ],
          "vents": [ { "name": "V1", "path": { "points": [ {"xMm":600,"yMm":0}, {"xMm":600,"yMm":400} ] } } ],
          "timingMarks": [ { "name": "M1", "at": {"xMm":300,"yMm":200} } ],
          "resin": { "viscosityPaS": 0.2, "gelTimeMin": 60, "mixToOpenMin": 6, "densityKgPerM3": 1100 },
          "bag": { "pressureMbarAbs": 13.25, "ambientMbarAbs": 1013.25 },
          "resolution": { "cellMm": 5 }
        }
        """;

    public static InfusionPlan Plan() => PlanJson.Read(Json).Message;

    public static InfusionPlan With(Action<InfusionPlan> change)
    {
        InfusionPlan plan = Plan();
        change(plan);
        return plan;
    }

    /// <summary>A request in JSON round a plan in JSON.</summary>
    public static StringContent Request(string plan, string rest = "") => new($"{{\"plan\": {plan}{rest}}}", Encoding.UTF8, "application/json");
}

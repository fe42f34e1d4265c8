using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Tests.Plans;

/// <summary>A strip of 600 × 400 mm fed along its left edge, with a vent along its right edge.</summary>
internal static class StraightStrip
{
    public const string Json = """
        {
          "title": "Straight strip",
          "preform": {
            "outline": { "points": [ {"xMm":0,"yMm":0}, {"xMm":600,"yMm":0}, {"xMm":600,"yMm":400}, {"xMm":0,"yMm":400} ] },
            "cutouts": [],
            "permeabilityFactor": 1.5,
            "zones": [ { "name": "skin", "thicknessMm": 3, "porosity": 0.5,
                         "permeability": { "k1M2": 1e-10, "k2M2": 1e-10, "k3M2": 1e-12, "angleDeg": 0 } } ] },
          "flowMeshes": [],
          "gaps": [],
          "feeds": [ { "name": "F1", "path": { "points": [ {"xMm":0,"yMm":0}, {"xMm":0,"yMm":400} ] }, "contactWidthMm": 12 } ],
          "vents": [ { "name": "V1", "path": { "points": [ {"xMm":600,"yMm":0}, {"xMm":600,"yMm":400} ] }, "contactWidthMm": 12 } ],
          "timingMarks": [ { "name": "M1", "at": {"xMm":300,"yMm":200} } ],
          "resin": { "viscosityPaS": 0.2, "gelTimeMin": 60, "mixToOpenMin": 6, "densityKgPerM3": 1100 },
          "bag":   { "pressureMbarAbs": 13.25, "ambientMbarAbs": 1013.25 },
          "goals": { "largestDrySpotMm2": 100, "smallestGelMarginRatio": 1, "mostResinOutCm3": 200 },
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

    public static Point At(double xMm, double yMm) => new() { XMm = xMm, YMm = yMm };

    public static Ring RingOf(params (double X, double Y)[] corners)
    {
        var ring = new Ring();
        ring.Points.AddRange(corners.Select(corner => At(corner.X, corner.Y)));
        return ring;
    }

    public static V1.Path PathOf(params (double X, double Y)[] points)
    {
        var path = new V1.Path();
        path.Points.AddRange(points.Select(point => At(point.X, point.Y)));
        return path;
    }
}

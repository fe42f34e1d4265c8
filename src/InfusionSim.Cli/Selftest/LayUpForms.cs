using InfusionSim.Protocol.V1;
using static InfusionSim.Cli.Shapes.Drawing;

namespace InfusionSim.Cli.Selftest;

/// <summary>Numbers known from a formula, of what a real lay-up has: turned cloth, a mesh, a hose, a bore, a slope.</summary>
public static class LayUpForms
{
    private const double Viscosity = 0.2, Drive = 1e5, ClothPermeability = 1e-10, Porosity = 0.5, Thickness = 0.003, Density = 1100, Gravity = 9.80665;

    private const double BoreMm = 10, LineLength = 2, FieldWidth = 0.16, FieldPermeability = 1.76e-9;

    private const double MeshThickness = 0.001, MeshPermeability = 3e-9, MeshPorosity = 0.85;

    // The formula is that of layers without any resistance between them; 1e-6 m² leaves this much.
    private const double NearlyOpen = 1e-5;

    // Weight is followed in steps of the clock, as many on every grid; this much of the time is theirs.
    private const double StepsUphill = 2e-3;

    // The formula has the laminate in one piece and the front far from both ends; ten sub-layers, and the middle of what is read along half a metre,
    // leave this much.
    private const double SubLayersLeave = 3e-2;
    private const int SubLayers = 10;

    private const double LaminateThrough = 5e-12, HardlyAlong = 1e-14;

    /// <summary>All checks.</summary>
    public static readonly IReadOnlyList<ClosedForm> All =
    [
        new("ellipse 600 x 400, cloth 4 : 1 at 30°", "derived: φμ/(2Δp(Kxx/a² + Kyy/b²))", TurnedEllipse(0.3, 0.2), 400, 3e-3, Turned, ClosedForms.Fill),
        new("mesh on a strip of 1 m, open through", "Darcy's law, layers in parallel, derived", Parallel(1), 1000, 1e-5, Meshed, ClosedForms.Fill) { Floor = NearlyOpen },
        new("square 500 mm behind a hose of 2 m", "hose and strip in series, derived; Hagen and Poiseuille", BehindHose(0.5, 0.004, 2), 500, 1e-5, Hosed, ClosedForms.Fill),
        new("upright strip of 1 m, fed at its foot", "Darcy's law with the weight of the resin, derived", Uphill(1), 1000, 2e-3, Upright, ClosedForms.Fill) { Floor = StepsUphill },
        new("feed line of 2 m, pressure at its end", "1/cosh(mL), m² = 8T/(x π r⁴), derived", LineEnd(), 1e3 * LineLength, 1e-4, Lined, EndOfLine) { Unit = "" },
        new("mesh that runs ahead, by how far", "lead and lag under a mesh, derived", 1e3 * Lag(), 500, 3e-2, MeshAhead, LagLength) { Unit = "mm", Floor = SubLayersLeave },
    ];

    // Kxx = K1 cos² + K2 sin², Kyy = K1 sin² + K2 cos²: a pressure that falls like 1 − x²/a² − y²/b² does not feel Kxy.
    private static double TurnedEllipse(double a, double b)
    {
        double along = 4 * ClothPermeability, across = ClothPermeability, kxx = 0.75 * along + 0.25 * across, kyy = 0.25 * along + 0.75 * across;
        return Porosity * Viscosity / (2 * Drive * (kxx / (a * a) + kyy / (b * b)));
    }

    private static double Parallel(double length) =>
        (MeshPorosity * MeshThickness + Porosity * Thickness) / (MeshPermeability * MeshThickness + ClothPermeability * Thickness) * Viscosity * length * length / (2 * Drive);

    // An empty hose fills in 4μL²/(r²Δp); from then on it is worth λ = 8KA L/(πr⁴) of cloth.
    private static double BehindHose(double side, double radius, double length)
    {
        double worth = 8 * ClothPermeability * side * Thickness * length / (Math.PI * Math.Pow(radius, 4));
        return ClosedForms.Slowness * (side * side / 2 + worth * side) + 4 * Viscosity * length * length / (radius * radius * Drive);
    }

    private static double Uphill(double length)
    {
        double climb = Drive / (Density * Gravity);
        return Porosity * Viscosity / (ClothPermeability * Density * Gravity) * (-length - climb * Math.Log(1 - length / climb));
    }

    // What the line loses along its bore for each length it loses to the vents of its field.
    private static double LineEnd() =>
        1 / Math.Cosh(LineLength * Math.Sqrt(8 * FieldPermeability * Thickness / (FieldWidth * Math.PI * Math.Pow(BoreMm / 2e3, 4))));

    // 6h₁/(φ₂√(2κ)) (√(φ₂h₂/(3h₁) + φ₁/2) − √(φ₁/2)) with κ = K₃/(φ₂K₁), 1 the mesh and 2 the laminate.
    private static double Lag()
    {
        double kappa = LaminateThrough / (Porosity * MeshPermeability);
        return 6 * MeshThickness / (Porosity * Math.Sqrt(2 * kappa)) * (Math.Sqrt(Porosity * Thickness / (3 * MeshThickness) + MeshPorosity / 2) - Math.Sqrt(MeshPorosity / 2));
    }

    private static double? EndOfLine(FillForecast forecast) => forecast.Feeds[0].Line?.EndPressureRatio;

    private static double? LagLength(FillForecast forecast) => forecast.Lag?.HasLengthMm == true ? forecast.Lag.LengthMm : null;

    // Two fields between three lines; the second is twice as wide and fills last, so that the first is full and steady by then.
    private static InfusionPlan Lined()
    {
        const double Width = 1e3 * FieldWidth;
        InfusionPlan plan = ClosedForms.Strip(3 * Width, 1e3 * LineLength);
        plan.Preform.Zones[0].Permeability = new Permeability { K1M2 = FieldPermeability, K2M2 = FieldPermeability / 100 };
        plan.Feeds[0].BoreMm = BoreMm;
        plan.Feeds.Add(Feed("F2", At(3 * Width, 0), At(3 * Width, 1e3 * LineLength)));
        plan.Vents.Clear();
        plan.Vents.Add(Vent("V1", At(Width, 0), At(Width, 1e3 * LineLength)));
        return plan;
    }

    // The formula lets nothing run along the laminate inside the lag.
    private static InfusionPlan MeshAhead()
    {
        InfusionPlan plan = Meshed(500, 20);
        plan.Preform.Zones[0].Permeability = new Permeability { K1M2 = HardlyAlong, K3M2 = LaminateThrough };
        plan.FlowMeshes[0].Permeability.K3M2 = 1e-8;
        plan.Resolution = new Resolution { SubLayers = SubLayers };
        return plan;
    }

    private static InfusionPlan Turned()
    {
        InfusionPlan plan = ClosedForms.EllipsePlan();
        plan.Preform.Zones[0].Permeability = new Permeability { K1M2 = 4 * ClothPermeability, K2M2 = ClothPermeability, AngleDeg = 30 };
        return plan;
    }

    private static InfusionPlan Meshed() => Meshed(1000, 40);

    private static InfusionPlan Meshed(double length, double width)
    {
        InfusionPlan plan = ClosedForms.Strip(length, width);
        plan.Preform.Zones[0].Permeability.K3M2 = 1e-6;
        plan.FlowMeshes.Add(new FlowMesh { Name = "mesh", ThicknessMm = 1, Porosity = MeshPorosity, Permeability = new Permeability { K1M2 = MeshPermeability, K3M2 = 1e-6 } });
        return plan;
    }

    private static InfusionPlan Hosed()
    {
        InfusionPlan plan = ClosedForms.Strip(500, 500);
        plan.Feeds[0].Hose = new Hose { BoreMm = 8, LengthM = 2 };
        return plan;
    }

    private static InfusionPlan Upright()
    {
        InfusionPlan plan = ClosedForms.Strip(1000, 40);
        plan.Slope = new Slope { AngleDeg = 90 };
        return plan;
    }
}

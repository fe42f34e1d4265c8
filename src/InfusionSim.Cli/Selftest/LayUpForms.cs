using InfusionSim.Protocol.V1;

namespace InfusionSim.Cli.Selftest;

/// <summary>Fills with a known time, of what a real lay-up has: turned cloth, a mesh, a hose, a slope.</summary>
public static class LayUpForms
{
    private const double Viscosity = 0.2, Drive = 1e5, ClothPermeability = 1e-10, Porosity = 0.5, Thickness = 0.003, Density = 1100, Gravity = 9.80665;

    private const double MeshThickness = 0.001, MeshPermeability = 3e-9, MeshPorosity = 0.85;

    // The formula is that of layers without any resistance between them; 1e-6 m² leaves this much.
    private const double NearlyOpen = 1e-5;

    // Weight is followed in steps of the clock, as many on every grid; this much of the time is theirs.
    private const double StepsUphill = 2e-3;

    /// <summary>All checks.</summary>
    public static readonly IReadOnlyList<ClosedForm> All =
    [
        new("ellipse 600 x 400, cloth 4 : 1 at 30°", "derived: φμ/(2Δp(Kxx/a² + Kyy/b²))", TurnedEllipse(0.3, 0.2), 400, 3e-3, Turned, ClosedForms.Fill),
        new("mesh on a strip of 1 m, open through", "Darcy's law, layers in parallel, derived", Parallel(1), 1000, 1e-5, Meshed, ClosedForms.Fill) { Floor = NearlyOpen },
        new("square 500 mm behind a hose of 2 m", "hose and strip in series, derived; Hagen and Poiseuille", BehindHose(0.5, 0.004, 2), 500, 1e-5, Hosed, ClosedForms.Fill),
        new("upright strip of 1 m, fed at its foot", "Darcy's law with the weight of the resin, derived", Uphill(1), 1000, 2e-3, Upright, ClosedForms.Fill) { Floor = StepsUphill },
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

    private static InfusionPlan Turned()
    {
        InfusionPlan plan = ClosedForms.EllipsePlan();
        plan.Preform.Zones[0].Permeability = new Permeability { K1M2 = 4 * ClothPermeability, K2M2 = ClothPermeability, AngleDeg = 30 };
        return plan;
    }

    private static InfusionPlan Meshed()
    {
        InfusionPlan plan = ClosedForms.Strip(1000, 40);
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

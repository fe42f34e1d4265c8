using InfusionSim.Protocol.V1;
using static InfusionSim.Cli.Shapes.Drawing;

namespace InfusionSim.Cli.Selftest;

/// <summary>
/// Fills with a known time, of cloth alone, and all other checks after them. All with K = 1e-10 m², porosity 0.5, 0.2 Pa·s and 1000 mbar of driving
/// pressure.
/// </summary>
public static class ClosedForms
{
    private const int RoundCorners = 720;
    private const int MarksAllRound = 40;

    /// <summary>φ μ / (K Δp) [s/m²].</summary>
    internal const double Slowness = Porosity * 0.2 / (1e-10 * 1e5);

    /// <summary>Porosity of the cloth [-].</summary>
    internal const double Porosity = 0.5;

    /// <summary>Thickness of the cloth [mm].</summary>
    internal const double ThicknessMm = 3;

    /// <summary>All checks.</summary>
    public static readonly IReadOnlyList<ClosedForm> All =
    [
        new("strip 500 mm, fed at its end", "Darcy's law in one dimension, derived: φμL²/(2KΔp)", Slowness * 0.25 / 2, 500, 1e-6, Strip, Fill),
        new("the same strip, half way", "Darcy's law in one dimension, derived", Slowness * 0.0625 / 2, 500, 1e-3, Strip, Marks),
        new("two lay-ups in series", "Darcy's law in one dimension, derived", 877.5, 500, 1e-6, TwoZones, Fill),
        new("fitting Ø 12 mm, front at 250 mm", "radial front: Adams & Rebenfeld (1988), from memory", Radial(0.006, 0.25), 600, 5e-3, Fitting, Marks),
        new("disc Ø 1 m, fed all round", "convergent radial front, derived: φμR²/(4KΔp)", Slowness * 0.25 / 4, 1000, 3e-3, Disc, Fill),
        new("the same disc, half way in", "convergent radial front, derived", Convergent(0.5, 0.25), 1000, 3e-3, Disc, Marks),
        new("rectangle 600 x 400, fed all round", "torsion function: Timoshenko & Goodier, Theory of Elasticity, from memory", Slowness * Rectangle(0.4, 0.6), 400, 3e-3,
            PlainRectangle, Fill),
        new("ellipse 600 x 400, fed all round", "torsion function: Timoshenko & Goodier, from memory", Slowness * Ellipse(0.3, 0.2), 400, 3e-3, EllipsePlan, Fill),
        new("triangle 500 mm, fed all round", "torsion function: Timoshenko & Goodier, from memory", Slowness * Math.Pow(0.5 * Math.Sqrt(3) / 2, 2) / 27, 433.0127, 5e-3,
            Triangle, Fill),
        .. LayUpForms.All,
        .. ShotForms.All,
    ];

    private static double Radial(double fitting, double front) =>
        Slowness / 2 * (front * front * Math.Log(front / fitting) - (front * front - fitting * fitting) / 2);

    private static double Convergent(double outer, double front) =>
        Slowness * (outer * outer / 4 - front * front / 4 - front * front / 2 * Math.Log(outer / front));

    private static double Ellipse(double a, double b) => a * a * b * b / (2 * (a * a + b * b));

    // a²[1/8 − 4/π³ Σ (−1)^((n−1)/2) / (n³ cosh(nπb/2a))] over odd n, a the shorter side.
    private static double Rectangle(double a, double b)
    {
        double sum = 0;
        for (int n = 1; n < 60; n += 2) sum += (n % 4 == 1 ? 1 : -1) / (Math.Pow(n, 3) * Math.Cosh(n * Math.PI * b / (2 * a)));
        return a * a * (0.125 - 4 / Math.Pow(Math.PI, 3) * sum);
    }

    internal static double? Fill(FillForecast forecast) => forecast.HasFillTimeS ? forecast.FillTimeS : null;

    internal static double? Marks(FillForecast forecast) =>
        forecast.TimingMarks.All(mark => mark.HasArrivalTimeS) ? forecast.TimingMarks.Average(mark => mark.ArrivalTimeS) : null;

    private static InfusionPlan Strip() => Strip(500, 100);

    /// <summary>A strip fed at its left end.</summary>
    /// <param name="length">Length [mm].</param>
    /// <param name="width">Width [mm].</param>
    internal static InfusionPlan Strip(double length, double width)
    {
        InfusionPlan plan = Cloth(Drawing(0, 0, length, width));
        plan.Feeds.Add(Feed("F1", At(0, 0), At(0, width)));
        plan.Vents.Add(Vent("V1", At(length, 0), At(length, width)));
        plan.TimingMarks.Add(Mark("M1", At(length / 2, width / 2)));
        return plan;
    }

    private static InfusionPlan TwoZones()
    {
        InfusionPlan plan = Strip();
        plan.Preform.Zones[0].Porosity = 0.55;
        plan.Preform.Zones[0].Permeability.K1M2 = 2e-10;
        Zone end = plan.Preform.Zones[0].Clone();
        (end.Name, end.Area, end.Porosity, end.Permeability.K1M2) = ("end", Drawing(300, 0, 500, 100), 0.45, 5e-11);
        plan.Preform.Zones.Add(end);
        return plan;
    }

    private static InfusionPlan Fitting()
    {
        InfusionPlan plan = Cloth(Drawing(0, 0, 600, 600));
        plan.Feeds.Add(Feed("F1", At(300, 300)));
        plan.Vents.Add(Membrane(At(0, 0)));
        MarkAllRound(plan, new Point { XMm = 300, YMm = 300 });
        return plan;
    }

    private static InfusionPlan Disc()
    {
        InfusionPlan plan = FedAllRound(Round(500, 500), At(0, 0));
        MarkAllRound(plan, At(0, 0));
        return plan;
    }

    // The golden angle: no two marks see the squares from the same side, so their mean speaks for the whole front.
    private static void MarkAllRound(InfusionPlan plan, Point centre)
    {
        double goldenAngle = Math.PI * (3 - Math.Sqrt(5));
        for (int k = 0; k < MarksAllRound; k++)
        {
            Point at = new() { XMm = centre.XMm + 250 * Math.Cos(k * goldenAngle), YMm = centre.YMm + 250 * Math.Sin(k * goldenAngle) };
            plan.TimingMarks.Add(Mark($"M{k + 1}", at));
        }
    }

    private static InfusionPlan PlainRectangle() => FedAllRound(Drawing(0, 0, 600, 400), At(300, 200));

    internal static InfusionPlan EllipsePlan() => FedAllRound(Round(300, 200), At(0, 0));

    private static InfusionPlan Triangle()
    {
        double height = 250 * Math.Sqrt(3);
        return FedAllRound(Outline(At(0, 0), At(500, 0), new Point { XMm = 250, YMm = height }), new Point { XMm = 250, YMm = height / 3 });
    }

    private static InfusionPlan FedAllRound(Ring outline, Point last)
    {
        InfusionPlan plan = Cloth(outline);
        plan.Feeds.Add(Feed("F1", AllRound(outline)));
        plan.Vents.Add(Membrane(last));
        return plan;
    }

    private static Vent Membrane(Point at)
    {
        Vent vent = Vent("V1", at);
        vent.Kind = VentKind.Membrane;
        return vent;
    }

    private static Ring Round(double a, double b) => Outline(Enumerable.Range(0, RoundCorners).Select(k => new Point
    {
        XMm = a * Math.Cos(2 * Math.PI * k / RoundCorners),
        YMm = b * Math.Sin(2 * Math.PI * k / RoundCorners),
    }));

    private static Ring Drawing(double left, double bottom, double right, double top) => Shapes.Drawing.Rectangle(left, bottom, right, top);

    private static InfusionPlan Cloth(Ring outline) => new()
    {
        Preform = new Preform
        {
            Outline = outline,
            PermeabilityFactor = 1,
            Zones = { new Zone { Name = "cloth", ThicknessMm = ThicknessMm, Porosity = Porosity, Permeability = new Permeability { K1M2 = 1e-10 } } },
        },
        Resin = new Resin { ViscosityPaS = 0.2, GelTimeMin = 1000, DensityKgPerM3 = 1100 },
        // A perfect vacuum: the formulas know of no air that is sealed in.
        Bag = new Bag { PressureMbarAbs = 0, AmbientMbarAbs = 1000 },
    };
}

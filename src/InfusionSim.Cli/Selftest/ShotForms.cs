using InfusionSim.Protocol.V1;
using static InfusionSim.Cli.Shapes.Drawing;

namespace InfusionSim.Cli.Selftest;

/// <summary>Numbers known from a formula of what changes while a panel fills: a clamp is shut, air is cut off, the resin thickens.</summary>
public static class ShotForms
{
    private const double Length = 0.5, Drive = 1e5, VentAt = 0.1;

    // One square at the coarsest [mm].
    private const double Width = 20;

    // Pressure of the air in the strips that keep some [Pa]: under the clamped vent, and in the strip without a vent.
    private const double Clamped = 2e3, Sealed = 5e3;

    // e-folding rates of the viscosity [1/s]: the first strip fills, the second never does.
    private const double Thickens = 5e-4, ThickensFast = 1e-3;

    // Gas is followed in steps, as many on every grid, and the front is read between the middles of two squares; this much is theirs.
    private const double StepsOfGas = 1e-3, StepsAndReading = 2.5e-3;

    // What the readings of the doubling time and of the clock leave.
    private const double ClockReading = 1e-5;

    /// <summary>All checks.</summary>
    public static readonly IReadOnlyList<ClosedForm> All =
    [
        new("strip fed at both ends, vent shuts", "two straight fronts, derived", Straight(VentAt, Drive - Clamped), 500, 5e-3, ClampedStrip, Shut),
        new("the same strip, air that stays", "Boyle's law: (L − 2a)·p/p_feed, derived", (500 - 2e3 * VentAt) * Clamped / Drive, 500, 5e-3, ClampedStrip, AirLeft)
        {
            Unit = "mm",
            Floor = StepsOfGas,
        },
        new("strip without a vent, front at 450 mm", "Darcy and Boyle, derived", SealedEnd(0.45), 500, 5e-3, SealedStrip, ClosedForms.Marks) { Floor = StepsAndReading },
        new("strip, resin that thickens", "straight front with ∫ dt/μ, derived", Thickened(Thickens), 500, 1e-5, () => ThickeningStrip(Thickens), ClosedForms.Fill)
        {
            Floor = ClockReading,
        },
        new("strip, resin that thickens twice as fast", "straight front with ∫ dt/μ, derived", 1e3 * Math.Sqrt(2 / (ThickensFast * ClosedForms.Slowness)), 500, 1e-3,
            () => ThickeningStrip(ThickensFast), Reach)
        {
            Unit = "mm",
        },
    ];

    private static double Straight(double place, double drive) => ClosedForms.Slowness * Drive / drive * place * place / 2;

    // The air stands at p₀L/(L − x); with x_e = L(1 − p₀/p_in): φμ/(K p_in) {x²/2 + (L − x_e)[−x − x_e ln(1 − x/x_e)]}.
    private static double SealedEnd(double place)
    {
        double end = Length * (1 - Sealed / Drive);
        return ClosedForms.Slowness * (place * place / 2 + (Length - end) * (-place - end * Math.Log(1 - place / end)));
    }

    // With μ = μ₀ exp(kt): −ln(1 − k t₀)/k, t₀ the time without thickening.
    private static double Thickened(double rate) => -Math.Log(1 - rate * Straight(Length, Drive)) / rate;

    private static double? Shut(FillForecast forecast) => forecast.ClampEvents.Count == 1 ? forecast.ClampEvents[0].TimeS : null;

    private static double? AirLeft(FillForecast forecast) =>
        forecast.DrySpots.Count == 1 ? 1e3 * forecast.DrySpots[0].GasVolumeCm3 / (ClosedForms.Porosity * ClosedForms.ThicknessMm * Width) : null;

    private static double? Reach(FillForecast forecast) => forecast.HasFillTimeS ? null : 1e3 * Length * forecast.FilledFraction;

    private static InfusionPlan ClampedStrip()
    {
        InfusionPlan plan = ClosedForms.Strip(500, Width);
        plan.Bag.PressureMbarAbs = Clamped / 100;
        plan.Feeds.Add(Feed("F2", At(500, 0), At(500, Width)));
        plan.Vents.Clear();
        plan.Vents.Add(Vent("V1", At(1e3 * VentAt, 0), At(1e3 * VentAt, Width)));
        plan.Vents[0].Shuts = new Moment { WhenReached = "V1" };
        return plan;
    }

    private static InfusionPlan SealedStrip()
    {
        InfusionPlan plan = ClosedForms.Strip(500, Width);
        plan.Bag.PressureMbarAbs = Sealed / 100;
        plan.Vents.Clear();
        plan.TimingMarks.Clear();
        plan.TimingMarks.Add(Mark("M1", At(450, Width / 2)));
        return plan;
    }

    private static InfusionPlan ThickeningStrip(double rate)
    {
        InfusionPlan plan = ClosedForms.Strip(500, Width);
        plan.Resin.ViscosityRise = new ViscosityRise { DoublingMin = Math.Log(2) / rate / 60 };
        return plan;
    }
}

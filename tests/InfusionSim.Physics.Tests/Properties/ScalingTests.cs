using CsCheck;
using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Resins;

namespace InfusionSim.Physics.Tests.Properties;

/// <summary>Times and volumes scale as Darcy's law says: t ∝ μ L² / (K Δp), volumes with the lengths cubed, the pattern with nothing.</summary>
public sealed class ScalingTests
{
    private const double Tolerance = SameFill.Tolerance;

    // Without gas the whole forecast scales to the tolerance of the solver; gas is followed in steps that find their own length.
    private static readonly Bag Perfect = new(0, LopsidedPanel.Bag.Ambient - LopsidedPanel.Bag.Pressure);

    private static readonly Gen<double> Factor = Gen.Double[-1, 1].Select(exponent => Math.Pow(10, exponent));

    [Fact]
    public void Times_UnderAnyViscosityPressureAndPermeability_FollowDarcysLaw()
    {
        Forecast plain = LopsidedPanel.Of(VentKind.Tube).Predict(bag: Perfect);

        Gen.Select(Factor, Factor, Factor).Sample(
            (viscosity, drive, permeability) =>
            {
                Resin resin = LopsidedPanel.Resin with { Viscosity = new ConstantViscosity(LopsidedPanel.Viscosity * viscosity) };

                Bag bag = new(0, Perfect.Ambient * drive);
                Forecast scaled = LopsidedPanel.Of(VentKind.Tube).WithPermeabilityTimes(permeability).Predict(resin, bag);
                ShouldScale(plain, scaled, viscosity / (drive * permeability), 1 / permeability, 1, 1);
            },
            iter: 4,
            threads: 1);
    }

    [Fact]
    public void Times_UnderAnyScaleOfTheDrawing_GrowWithItsSquare()
    {
        Forecast plain = LopsidedPanel.Of(VentKind.Tube).Predict(bag: Perfect);

        Factor.Sample(
            scale =>
            {
                Panel panel = LopsidedPanel.Of(VentKind.Tube).Mapped(place => new Point2(place.X * scale, place.Y * scale), scale, angle => angle);
                ShouldScale(
                    plain, panel.Predict(bag: Perfect, goals: new Goals(LargestDrySpot: new Goals().LargestDrySpot * scale * scale)), scale * scale,
                    scale * scale, scale, scale * scale * scale);
            },
            iter: 4,
            threads: 1);
    }

    [Fact]
    public void Forecast_InOtherUnits_IsTheSame()
    {
        // Millimetres and grams for metres and kilograms: lengths ×10³, permeabilities ×10⁶; 1 Pa and 1 Pa·s keep their numbers.
        Forecast plain = LopsidedPanel.Of(VentKind.Tube).Predict(bag: Perfect);
        Panel inMillimetres = LopsidedPanel.Of(VentKind.Tube).Mapped(
            place => new Point2(place.X * 1e3, place.Y * 1e3), 1e3, angle => angle).WithPermeabilityTimes(1e6);

        ShouldScale(plain, inMillimetres.Predict(bag: Perfect, goals: new Goals(LargestDrySpot: new Goals().LargestDrySpot * 1e6)), 1, 1, 1e3, 1e9);
    }

    [Theory]
    [InlineData(0.3, 4)]
    [InlineData(2.5, 0.5)]
    public void TrappedAir_UnderAnotherViscosityAndPressure_EndsTheSame(double viscosity, double drive)
    {
        Forecast plain = LopsidedPanel.Of(VentKind.Membrane).Predict();
        Resin resin = LopsidedPanel.Resin with { Viscosity = new ConstantViscosity(LopsidedPanel.Viscosity * viscosity) };

        // Both pressures are scaled: the ratio between them decides how far sealed air shrinks.
        Bag bag = new(LopsidedPanel.Bag.Pressure * drive, LopsidedPanel.Bag.Ambient * drive);
        Forecast scaled = LopsidedPanel.Of(VentKind.Membrane).Predict(resin, bag);
        plain.DrySpots.Count.ShouldBeGreaterThan(0);
        scaled.DrySpots.Sum(static spot => spot.GasVolume).ShouldBe(
            plain.DrySpots.Sum(static spot => spot.GasVolume), 5e-3 * plain.DrySpots.Sum(static spot => spot.GasVolume));
        scaled.EndTime.ShouldBe(plain.EndTime * viscosity / drive, 0.02 * plain.EndTime * viscosity / drive);
    }

    private static void ShouldScale(Forecast plain, Forecast scaled, double time, double clock, double length, double volume)
    {
        // The cells keep their order, so each is its own twin.
        SameFill.Check(plain.Map, scaled.Map, cell => cell, clock);
        (scaled.FillTime!.Value / plain.FillTime!.Value).ShouldBe(time, Tolerance * time);
        // Arrivals are interpolated between states along the way, which are computed to a coarser tolerance.
        (scaled.Vents[0].ArrivalTime!.Value / plain.Vents[0].ArrivalTime!.Value).ShouldBe(time, 1e-6 * time);
        (scaled.TimingMarkArrivals[0]!.Value / plain.TimingMarkArrivals[0]!.Value).ShouldBe(time, 1e-6 * time);
        (scaled.LastToFill!.Value.X / plain.LastToFill!.Value.X).ShouldBe(length, 1e-9 * length);
        (scaled.LastToFill!.Value.Y / plain.LastToFill!.Value.Y).ShouldBe(length, 1e-9 * length);
        (scaled.ResinInPreform / plain.ResinInPreform).ShouldBe(volume, Tolerance * volume);
        for (int k = 0; k < plain.ResinIn.Count; k++) (scaled.ResinIn[k] / plain.ResinIn[k]).ShouldBe(volume, 10 * Tolerance * volume);
        (scaled.Vents[0].ResinOut / plain.Vents[0].ResinOut).ShouldBe(volume, 10 * Tolerance * volume);
        scaled.FilledFraction.ShouldBe(plain.FilledFraction, Tolerance);
        Math.Abs(scaled.MassBalanceError).ShouldBeLessThanOrEqualTo(1e-9);
    }
}

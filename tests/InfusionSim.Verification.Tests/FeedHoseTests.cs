using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;
using InfusionSim.Verification.Tests.Accuracy;
using InfusionSim.Verification.Tests.ClosedForms;
using InfusionSim.Verification.Tests.Settings;

namespace InfusionSim.Verification.Tests;

/// <summary>A straight front behind a feed hose.</summary>
public sealed class FeedHoseTests
{
    private const string Source = "Hagen and Poiseuille in series with Darcy, derived";
    private const double Side = 0.5, HoseRadius = 4e-3, HoseLength = 2;

    [Theory]
    [InlineData(1e-10, false, 1266.92)]
    [InlineData(1e-10, true, 1264.92)]
    [InlineData(2e-9, false, 79.4208)]
    [InlineData(2e-9, true, 77.4208)]
    public void FillTime_BehindAHose_IsThatOfTheSeries(double permeability, bool isPrimed, double expected)
    {
        // Source: t = (φμ/KΔp)(L²/2 + λL) with λ = 8 K A l/(π r⁴), and before it 4 μ l²/(r² Δp) where the hose is empty. Case: hose of 8 mm bore and
        // 2 m, panel 500 × 500 × 3 mm.
        HoseInSeries.FillTime(
            permeability, Reference.Porosity, Side, Side * Reference.Thickness, HoseRadius, HoseLength, isPrimed).ShouldBe(expected, 1e-5 * expected);
        Forecast forecast = Chain.Predict(Panel(permeability, isPrimed));

        // Tolerance 1e-5: half a node before the first makes the sum over nodes equal the integral; the digits given allow no more.
        new AccuracyRecord(
            $"hose of 2 m before K {permeability:0E0}{(isPrimed ? ", primed" : ", empty")}", Source, expected, forecast.FillTime!.Value, "s",
            Chain.GridOf(forecast.Map.Problem)).ShouldHold(1e-5);
    }

    [Fact]
    public void FrontPath_BehindAHose_IsThatOfTheSeries()
    {
        // Source: x_f = −λ + √(λ² + 2KΔp t/(φμ)) after the hose is full. Case: K 2e-9.
        FillMap map = FillMap.Compute(Chain.Problem(Panel(2e-9, isPrimed: false)));
        foreach (double x in (double[])[0.1, 0.25, 0.4])
        {
            double expected = HoseInSeries.FillTime(2e-9, Reference.Porosity, x, Side * Reference.Thickness, HoseRadius, HoseLength, isPrimed: false);

            // Tolerance 0.1 % of the fill: the tracker's own bound.
            double error = (map.ArrivalAt(new(x, 0.25)) / Reference.ClockRate - expected) / 79.4208;
            TestContext.Current.TestOutputHelper?.WriteLine($"x = {x} m: expected {expected:G6} s, off by {error:0.0e+0} of the fill");
            Math.Abs(error).ShouldBeLessThan(1e-3);
        }
    }

    [Fact]
    public void Resin_BehindAHose_IsInTheClothAndInTheHose()
    {
        // Source: π r² l = 100.531 mL stand in the hose, φ A L = 375 mL in the cloth.
        Forecast forecast = Chain.Predict(Panel(1e-10, isPrimed: false));
        FillState state = Chain.State(forecast.Map, forecast.Map.FillClock);

        // Tolerance 1e-9: no volume is lost.
        state.FeedLineVolume[0].ShouldBe(100.530965e-6, 1e-12);
        forecast.ResinIn[0].ShouldBe(375e-6, 375e-15);
        forecast.ResinInPreform.ShouldBe(375e-6, 375e-15);
    }

    private static Panel Panel(double permeability, bool isPrimed) => new(
        new(Shapes.Rectangle(Side, Side), []),
        [Reference.Isotropic("skin", permeability, Reference.Porosity, Reference.Thickness)],
        [new Feed("F1", new([new(0, 0), new(0, Side)]), 0.012) { Hose = new Hose(2 * HoseRadius, HoseLength, isPrimed) }],
        [new Vent("V1", new([new(Side, 0), new(Side, Side)]), 0.012, VentKind.Membrane)],
        [],
        Side / 50);
}

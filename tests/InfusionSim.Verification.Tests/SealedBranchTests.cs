using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Air;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;
using InfusionSim.Verification.Tests.Accuracy;
using InfusionSim.Verification.Tests.Settings;

namespace InfusionSim.Verification.Tests;

/// <summary>
/// A dead branch of two lay-ups off a strip whose far end stays open: air is sealed in the branch and pressed together by less than the feed's
/// pressure.
/// </summary>
public sealed class SealedBranchTests
{
    private const string Source = "one-dimensional network and Boyle's law, derived";
    private const double Width = 5e-3;
    private const double Length = 0.5;
    private const double BranchLeft = 0.2;
    private const double LowerTop = Width + 0.12;
    private const double UpperTop = Width + 0.2;
    private const double LowerStore = 0.6 * 4e-3;
    private const double UpperStore = 0.4 * 2e-3;
    private static readonly Bag Bag = new(Pressure: 2e4, Ambient: 1e5);

    private static Forecast Predict()
    {
        var outline = new Ring(
        [
            new(0, 0), new(Length, 0), new(Length, Width), new(BranchLeft + Width, Width), new(BranchLeft + Width, UpperTop),
            new(BranchLeft, UpperTop), new(BranchLeft, Width), new(0, Width),
        ]);
        return Chain.Predict(
            new Panel(
                new Region(outline, []),
                [
                    Reference.Skin,
                    Reference.Isotropic("lower", 5e-9, 0.6, 4e-3, Shapes.Box(BranchLeft, Width, BranchLeft + Width, LowerTop)),
                    Reference.Isotropic("upper", 5e-9, 0.4, 2e-3, Shapes.Box(BranchLeft, LowerTop, BranchLeft + Width, UpperTop)),
                ],
                [new Feed("F1", new LinePath([new(0, 0), new(0, Width)]), 0.012)],
                [new Vent("V1", new LinePath([new(Length, 0), new(Length, Width)]), 0.012, VentKind.Tube)],
                [],
                Width),
            bag: Bag);
    }

    [Fact]
    public void SealedAir_InABranchOfTwoLayUps_EndsAtThePressureOfItsMouth()
    {
        // Source: with the far end at p_v and the strip full, pressure falls in a straight line from the feed to the vent; nothing flows in the
        // branch, so its air stands at the pressure of its mouth and Boyle's law gives its volume (derived).
        // Case: strip 0.5 m, mouth centred at 0.2025 m, branch of 0.12 m with φh = 2.4 mm and 0.08 m with φh = 0.8 mm, p_v = 20 kPa, p_in = 100 kPa.
        double mouth = Bag.Pressure + (Bag.Ambient - Bag.Pressure) * (1 - (BranchLeft + Width / 2) / Length);
        mouth.ShouldBe(67.6e3, 1);
        double sealedVolume = Width * ((LowerTop - Width) * LowerStore + (UpperTop - LowerTop) * UpperStore);
        double expected = sealedVolume * Bag.Pressure / mouth;
        Forecast forecast = Predict();
        DrySpot spot = forecast.DrySpots.ShouldHaveSingleItem();

        // Expected: 520.7 mm³ of gas. Tolerance 0.5 %: the mouth is one cell wide, a hundredth of the way from feed to vent.
        new AccuracyRecord(
            "sealed branch of two lay-ups, gas at the end", Source, expected * 1e9, spot.GasVolume * 1e9, "mm³",
            Chain.GridOf(forecast.Map.Problem)).ShouldHold(5e-3);

        // The gas fills the upper lay-up and the rest of it the top of the lower one. Tolerance: one cell.
        double dryLength = UpperTop - LowerTop + (expected / Width - (UpperTop - LowerTop) * UpperStore) / LowerStore;
        (spot.Area / Width).ShouldBe(dryLength, Width);
        (spot.SealedArea / Width).ShouldBe(UpperTop - Width, Width);
        forecast.Outcome.ShouldBe(Outcome.TrapsAir);
    }
}

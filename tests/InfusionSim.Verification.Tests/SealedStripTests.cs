using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Air;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;
using InfusionSim.Verification.Tests.Accuracy;
using InfusionSim.Verification.Tests.ClosedForms;
using InfusionSim.Verification.Tests.Settings;

namespace InfusionSim.Verification.Tests;

/// <summary>A strip fed at both ends whose membrane vent lies off its middle: the vent is covered and the middle is sealed.</summary>
public sealed class SealedStripTests
{
    private const string Source = "two straight fronts and Boyle's law, derived";
    private const double Length = 0.5;
    private const double CellSize = 5e-3;
    private const double VentAt = 0.1025;

    // Small enough to touch one cell alone, so that it is covered by one front.
    private const double VentDiameter = 1.5e-3;
    private static readonly Bag Bag = new(Pressure: 2e3, Ambient: 1e5);

    private static Forecast Predict() => Chain.Predict(
        new Panel(
            new Region(Shapes.Rectangle(Length, CellSize), []),
            [Reference.Skin],
            [Feed("F1", 0), Feed("F2", Length)],
            [new Vent("V1", new LinePath([new Point2(VentAt, CellSize / 2)]), VentDiameter, VentKind.Membrane)],
            [],
            CellSize),
        bag: Bag);

    [Fact]
    public void Middle_BehindACoveredMembraneVent_IsSealed()
    {
        // Source: both fronts run as alone until the left one stands at the vent. Case: p_v = 2 kPa, p_in = 100 kPa, vent in the 21st of 100 cells.
        double rate = (Bag.Ambient - Bag.Pressure) / Reference.Viscosity;
        double expected = SealedStrip.SealedClock(VentAt, Reference.Permeability, Reference.Porosity) / rate;
        expected.ShouldBe(53.603, 5e-4);
        Forecast forecast = Predict();
        DrySpot spot = forecast.DrySpots.ShouldHaveSingleItem();

        // Expected: sealed at 53.603 s with 295 mm dry. Tolerance: 0.5 % of the time; half a cell of length, less than the width of a front.
        new AccuracyRecord(
            "strip sealed behind its vent, time", Source, expected, spot.SealedClock / rate, "s", Chain.GridOf(forecast.Map.Problem)).ShouldHold(5e-3);
        double sealedLength = SealedStrip.SealedLength(Length, VentAt) * 1e3;
        new AccuracyRecord(
            "strip sealed behind its vent, dry length", Source, sealedLength, spot.SealedArea / CellSize * 1e3, "mm",
            Chain.GridOf(forecast.Map.Problem)).ShouldHold(CellSize * 1e3 / sealedLength / 2);
    }

    [Fact]
    public void SealedAir_BetweenTwoFeeds_ShrinksByThePressureRatio()
    {
        // Source: Boyle, p V constant; the resin round it comes to rest at the feeds' pressure. Case as above.
        double sealedVolume = SealedStrip.SealedLength(Length, VentAt) * CellSize * Reference.Thickness * Reference.Porosity;
        double expected = sealedVolume * Bag.Pressure / Bag.Ambient;
        Forecast forecast = Predict();
        DrySpot spot = forecast.DrySpots.ShouldHaveSingleItem();

        // Expected: 2 % of what was sealed, 5.9 mm long, midway between the fronts. Tolerance: the sealed volume is known to half a cell at either front;
        // length to one cell.
        new AccuracyRecord(
            "strip sealed behind its vent, gas at the end", Source, expected * 1e9, spot.GasVolume * 1e9, "mm³",
            Chain.GridOf(forecast.Map.Problem)).ShouldHold(CellSize / SealedStrip.SealedLength(Length, VentAt) / 2);
        (spot.Area / CellSize).ShouldBe(295e-3 * 0.02, CellSize);
        spot.At.X.ShouldBe(Length / 2, CellSize);
    }

    [Fact]
    public void Vent_InTheMiddle_SealsNothing()
    {
        // Source: both fronts meet at the vent. Case: the same strip of 101 cells with the vent in its middle cell. Expected: no dry spot, full at
        // φμ(L/2)²/(2KΔp).
        const double Size = Length / 101;
        Forecast forecast = Chain.Predict(
            new Panel(
                new Region(Shapes.Rectangle(Length, Size), []),
                [Reference.Skin],
                [Feed("F1", 0, Size), Feed("F2", Length, Size)],
                [new Vent("V1", new LinePath([new Point2(Length / 2, Size / 2)]), VentDiameter, VentKind.Membrane)],
                [],
                Size),
            bag: Bag);
        double rate = (Bag.Ambient - Bag.Pressure) / Reference.Viscosity;

        // Tolerance: the middle cell is fed from both sides, n²/8 + 1/8 of a cell's clock instead of n²/8: 1/n² = 1e-4.
        forecast.DrySpots.ShouldBeEmpty();
        new AccuracyRecord(
            "strip fed at both ends, vent in its middle", Source,
            StraightFront.ClockAt(Length / 2, Reference.Permeability, Reference.Porosity) / rate, forecast.FillTime!.Value, "s",
            Chain.GridOf(forecast.Map.Problem)).ShouldHold(1.5e-4);
    }

    private static Feed Feed(string name, double x, double width = CellSize) => new(name, new LinePath([new(x, 0), new(x, width)]), 0.012);
}

using InfusionSim.Physics.Air;
using InfusionSim.Physics.Clamps;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;
using InfusionSim.Verification.Tests.Accuracy;
using InfusionSim.Verification.Tests.ClosedForms;
using InfusionSim.Verification.Tests.Settings;

namespace InfusionSim.Verification.Tests;

/// <summary>
/// Air that is cut off and pushes back: a strip without a vent, a strip whose vent is clamped when resin shows, two pockets one behind the other.
/// </summary>
public sealed class TrappedAirTests
{
    private const double Length = 0.5;
    private const double Width = 0.02;

    [Fact]
    public void Strip_WithoutAVent_CompressesItsAirAsTheClosedFormSays()
    {
        // Source: Darcy and Boyle, derived: φ x dx/dt = K/μ (p_in − p₀ L/(L − x)). Case: p_in = 100 kPa, p₀ = 5 kPa, reference cloth and resin.
        Bag bag = new(5e3, 1e5);
        double[] places = [0.45, 0.47, 0.4749], times = [1249.652, 1527.773, 2014.25];
        double[] cells = [20e-3, 10e-3, 5e-3];
        double[,] errors = new double[cells.Length, places.Length];
        for (int grid = 0; grid < cells.Length; grid++)
        {
            Panel panel = Strip(cells[grid]) with { Vents = [] };
            FillMap map = Fill(panel, bag);
            for (int k = 0; k < places.Length; k++)
            {
                double rate = (bag.Ambient - bag.Pressure) / Reference.Viscosity;
                SealedEnd.TimeTo(places[k], Length, Reference.Permeability, Reference.Porosity, Reference.Viscosity, bag).ShouldBe(times[k], 5e-3);
                double seen = ClockSearch.WhenReached(map, static state => state.FilledFraction, places[k] / Length, map.Tallies[^1].Clock) / rate;
                errors[grid, k] = Math.Abs(seen / times[k] - 1);
                if (grid == cells.Length - 1)
                    new AccuracyRecord(
                        $"strip without a vent, front at {places[k] * 1e3:G4} mm", "Darcy and Boyle, derived", times[k], seen, "s",
                        Chain.GridOf(map.Problem)).ShouldHold(5e-3);
            }

            // It counts as full when all air is within a tenth of its last volume: at 472.5 mm.
            double filled = Length - 1.1 * Length * bag.Pressure / bag.Ambient, told = map.FillClock / (bag.Ambient - bag.Pressure) * Reference.Viscosity;
            if (grid == cells.Length - 1)
                new AccuracyRecord("strip without a vent, taken to be full", "Darcy and Boyle, derived",
                    SealedEnd.TimeTo(filled, Length, Reference.Permeability, Reference.Porosity, Reference.Viscosity, bag), told, "s", Chain.GridOf(map.Problem)).ShouldHold(5e-3);
        }

        // Order: the cells of 20 mm are at least as far off as those of 5 mm, and the coarse error is already small.
        errors[0, 0].ShouldBeGreaterThanOrEqualTo(errors[2, 0] * 0.5);
        errors[0, 0].ShouldBeLessThan(5e-3);
    }

    [Fact]
    public void Middle_SealedWhenTheVentIsClamped_ShrinksAsBoyleSays()
    {
        // Source: two straight fronts and Boyle. Case: fed at both ends, vent line at 100 mm that is clamped when resin reaches it, p_in = 100 kPa,
        // p_v = 2 kPa.
        Bag bag = new(2e3, 1e5);
        Panel panel = Strip(5e-3) with
        {
            Feeds = [new Feed("F1", Across(0), 0.012), new Feed("F2", Across(Length), 0.012)],
            Vents = [new Vent("V1", Across(0.1), 0.012, VentKind.Tube) { Clamp = new Clamp(1, [new ClampStep(new WhenReached("V1"), 0)]) }],
        };
        Forecast forecast = Chain.Predict(panel, bag: bag);
        DrySpot spot = forecast.DrySpots.ShouldHaveSingleItem();
        double clamped = forecast.Clock.TimeAt(forecast.Map.Turns.ShouldHaveSingleItem().Clock);
        new AccuracyRecord(
            "vent clamped when reached, time", "two straight fronts, derived", 51.0204, clamped, "s", Chain.GridOf(forecast.Map.Problem)).ShouldHold(5e-3);
        (spot.SealedArea / Width).ShouldBe(0.3, 5e-3);
        (spot.Area / Width).ShouldBe(6e-3, 5e-3);
        double pores = 0.3 * Width * Reference.Thickness * Reference.Porosity;
        new AccuracyRecord(
            "vent clamped when reached, gas at the end", "Boyle's law", pores * 0.02 * 1e9, spot.GasVolume * 1e9, "mm³",
            Chain.GridOf(forecast.Map.Problem)).ShouldHold(5e-3);
    }

    [Fact]
    public void TwoPockets_OnBothSidesOfAFeed_FollowTheirDifferentialEquations()
    {
        // Source: the two ordinary differential equations of the pockets, integrated here. Case: 350 mm and 150 mm of strip beside a feed line behind
        // a narrow primed hose.
        Bag bag = new(5e3, 1e5);
        const double Bore = 1.2e-3, HoseLength = 0.5, First = 0.35;
        double hose = Math.PI * Math.Pow(Bore / 2, 4) / 8 / HoseLength;
        Panel panel = Strip(5e-3) with
        {
            Feeds = [new Feed("F1", Across(First), 0.012) { Hose = new Hose(Bore, HoseLength, IsPrimed: true) }],
            Vents = [],
        };
        FillMap map = Fill(panel, bag);
        double whole = StraightFront.ClockAt(First, Reference.Permeability, Reference.Porosity);
        double[] clocks = [0.05 * whole, 0.2 * whole, 0.5 * whole, whole];
        var expected = new TwoSealedEnds(First, Length - First, Width * Reference.Thickness, Reference.Permeability, Reference.Porosity, hose, bag).At(clocks);
        double pores = Width * Reference.Thickness * Reference.Porosity;
        int split = (int)Math.Round(First / 5e-3);
        for (int k = 0; k < clocks.Length; k++)
        {
            FillState state = Chain.State(map, clocks[k]);
            double[] gas = [0, 0];
            for (int cell = 0; cell < map.Problem.Operator.CellCount; cell++)
                gas[cell % map.Problem.Cells.Grid.Columns < split ? 0 : 1] += map.Problem.PoreVolume[cell] * (1 - state.Saturation[cell]);
            double[] volumes = [pores * (First - expected[k].Fronts[0]), pores * (Length - First - expected[k].Fronts[1])];
            gas[0].ShouldBe(volumes[0], 5e-3 * volumes[0], $"first pocket at {k}");
            gas[1].ShouldBe(volumes[1], 5e-3 * volumes[1], $"second pocket at {k}");
            double[] amounts = [pores * First * bag.Pressure, pores * (Length - First) * bag.Pressure];
            for (int pocket = 0; pocket < 2; pocket++)
                (amounts[pocket] / gas[pocket]).ShouldBe(
                    expected[k].Pressures[pocket], 5e-3 * expected[k].Pressures[pocket], $"pressure of pocket {pocket} at {k}");
        }

        double last = pores * (First - expected[^1].Fronts[0]);
        new AccuracyRecord(
            "two pockets beside a feed, gas of the longer", "two ordinary differential equations, integrated", last * 1e9,
            GasLeftOf(map, clocks[^1], split) * 1e9, "mm³", Chain.GridOf(map.Problem)).ShouldHold(5e-3);
    }

    private static double GasLeftOf(FillMap map, double clock, int columns)
    {
        FillState state = Chain.State(map, clock);
        return Enumerable.Range(0, map.Problem.Operator.CellCount).Where(cell => cell % map.Problem.Cells.Grid.Columns < columns)
            .Sum(cell => map.Problem.PoreVolume[cell] * (1 - state.Saturation[cell]));
    }

    private static Panel Strip(double cellSize) => new(
        new(Shapes.Rectangle(Length, Width), []), [Reference.Skin], [new Feed("F1", Across(0), 0.012)], [new Vent("V1", Across(Length), 0.012, VentKind.Tube)], [], cellSize);

    private static LinePath Across(double x) => new([new(x, 0), new(x, Width)]);

    private static FillMap Fill(Panel panel, Bag bag) => FillMap.Compute(FillProblemBuilder.Build(panel), new FillConditions(Bag: bag));
}

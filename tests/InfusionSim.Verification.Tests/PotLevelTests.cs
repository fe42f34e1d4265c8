using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Air;
using InfusionSim.Physics.Clamps;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Vacuum;
using InfusionSim.Verification.Tests.Accuracy;
using InfusionSim.Verification.Tests.ClosedForms;
using InfusionSim.Verification.Tests.Settings;

namespace InfusionSim.Verification.Tests;

/// <summary>Level panels whose pots stand lower, with clamps that are turned, a vacuum that is changed and air that is sealed in.</summary>
public sealed class PotLevelTests
{
    private const double Length = 0.5;
    private const double Width = 0.02;

    // φ μ/(2K) [Pa·s/m²]: a straight front under the pressure P has gone x after this times x²/P.
    private const double Hold = Reference.Porosity * Reference.Viscosity / (2 * Reference.Permeability);

    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void FillTime_WithTheVacuumChangedOnTheWay_IsThatOfBothDrives(double below)
    {
        // Source: ∫ (Δp − ρgz) dt = φμL²/(2K), the front of a straight fill with a pot z below the fitting. Case: 100 kPa for 200 s, then 60 kPa.
        Bag bag = Reference.Bag with { Steps = [new BagStep(new AtTime(200), 40e3)] };
        double column = SuctionHead.Drop(Reference.Resin.Density, below);
        double expected = 200 + (Hold * Length * Length - (1e5 - column) * 200) / (60e3 - column);
        Forecast forecast = Chain.Predict(Strip(PotAt("P1", 0, -below)), bag: bag);

        // Tolerance 1e-6: each stretch is one exact solve.
        new AccuracyRecord(
            $"pot {below} m below the fitting, vacuum changed at 200 s", "hydrostatics", expected, forecast.FillTime!.Value, "s",
            Chain.GridOf(forecast.Map.Problem)).ShouldHold(1e-6);
    }

    [Fact]
    public void FillTime_FromTwoPotsAtTwoLevels_IsThatOfTwoFronts()
    {
        // Source: two straight fronts, x₁ + x₂ = L with xᵢ² = (Δp − ρgzᵢ) t/Hold. Case: pots level with the panel and 3 m below, one at each end.
        double low = 1e5 - SuctionHead.Drop(Reference.Resin.Density, 3);
        double expected = Hold * Length * Length / Math.Pow(Math.Sqrt(1e5) + Math.Sqrt(low), 2);
        Forecast forecast = Chain.Predict(Strip(PotAt("P1", 0, 0), PotAt("P2", Length, -3)));

        // Tolerance 0.1 %: where the fronts meet is known to a cell.
        new AccuracyRecord(
            "two pots 3 m apart in height, fill time", "two straight fronts and hydrostatics, derived", expected, forecast.FillTime!.Value, "s",
            Chain.GridOf(forecast.Map.Problem))
            .ShouldHold(1e-3);
    }

    [Fact]
    public void FillTime_WithALowerPotOpenedAtAMark_IsThatOfTwoFrontsInTurn()
    {
        // Source: a straight front from the first feed to the second, then one from there under the lower pot's pressure. Case: the second feed at
        // 0.2 m, its pot 2 m below.
        const double At = 0.2;
        double low = 1e5 - SuctionHead.Drop(Reference.Resin.Density, 2);
        double expected = Hold * (At * At / 1e5 + (Length - At) * (Length - At) / low);
        (Feed feed, Pot pot) = PotAt("P2", At, -2);
        Panel panel = Strip(PotAt("P1", 0, 0), (feed with { Clamp = new Clamp(0, [new ClampStep(new WhenReached("M"), 1)]) }, pot)) with
        {
            TimingMarks = [new TimingMark("M", new(At, Width / 2))],
        };
        Forecast forecast = Chain.Predict(panel);

        // Tolerance 0.1 %: the mark is reached to within a thousandth of the fill.
        new AccuracyRecord(
            "second feed from a pot 2 m below, opened at a mark", "two straight fronts and hydrostatics, derived", expected, forecast.FillTime!.Value,
            "s", Chain.GridOf(forecast.Map.Problem))
            .ShouldHold(1e-3);
    }

    [Fact]
    public void SealedEnd_FromAPotBelow_IsPressedTogetherByWhatTheColumnLeaves()
    {
        // Source: Darcy and Boyle with the feed at p_in − ρgz. Case: no vent, p₀ = 5 kPa, p_in = 100 kPa, pot 2 m below; front at 0.45 m.
        Bag bag = new(5e3, 1e5), below = new(5e3, 1e5 - SuctionHead.Drop(Reference.Resin.Density, 2));
        double expected = SealedEnd.TimeTo(0.45, Length, Reference.Permeability, Reference.Porosity, Reference.Viscosity, below);
        Forecast forecast = Chain.Predict(Strip(PotAt("P1", 0, -2)) with { Vents = [], TimingMarks = [new TimingMark("M", new(0.45, Width / 2))] }, bag: bag);
        double time = forecast.TimingMarkArrivals[0]!.Value, gas = forecast.DrySpots.Sum(static (DrySpot spot) => spot.GasVolume);
        double boyle = Length * Width * Reference.Thickness * Reference.Porosity * below.Pressure / below.Ambient;

        // Tolerance 0.5 %, as for the sealed end without a pot below.
        new AccuracyRecord(
            "strip without a vent, pot 2 m below, front at 450 mm", "Darcy and Boyle, derived", expected, time, "s",
            Chain.GridOf(forecast.Map.Problem)).ShouldHold(5e-3);
        new AccuracyRecord(
            "strip without a vent, pot 2 m below, gas at the end", "Boyle's law and hydrostatics", boyle * 1e9, gas * 1e9, "mm³",
            Chain.GridOf(forecast.Map.Problem)).ShouldHold(5e-3);
    }

    private static (Feed Feed, Pot Pot) PotAt(string pot, double x, double level) => (new Feed("F" + pot, Across(x), 0.012) { Pot = pot }, new Pot(pot, level));

    private static LinePath Across(double x) => new([new(x, 0), new(x, Width)]);

    private static Panel Strip(params (Feed Feed, Pot Pot)[] fed) => new(
        new Region(Shapes.Rectangle(Length, Width), []),
        [Reference.Skin],
        [.. fed.Select(static one => one.Feed)],
        [new Vent("V1", Across(fed.Length > 1 && fed[^1].Feed.Path.Points[0].X == Length ? Length / 2 : Length), 0.012, VentKind.Membrane)],
        [],
        5e-3)
    {
        Pots = [.. fed.Select(static one => one.Pot)],
    };
}

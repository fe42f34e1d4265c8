using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Resins;
using InfusionSim.Physics.Tests.Flow;

namespace InfusionSim.Physics.Tests.Gravity;

public class SlopeForecastTests
{
    private static readonly Resin Slow = new(0.2, 1e9, 0, 1100);

    // Δp = 10 kPa lifts the resin by 0.927 m.
    private static readonly Bag Weak = new(91325, 101325);

    [Fact]
    public void Predict_WallHigherThanTheClimb_StopsShortAndTellsTheHeight()
    {
        Forecast forecast = Predict(Wall(1.2));

        forecast.Outcome.ShouldBe(Outcome.StopsShort);
        forecast.FillTime.ShouldBeNull();
        // Squares of 50 mm: the highest full one has its middle less than one below the climb.
        forecast.HeightReached!.Value.ShouldBeInRange(0.927 - 0.055, 0.927);
        forecast.Findings.ShouldContain(finding => finding.Kind == FindingKind.StopsShort);
        forecast.Findings[0].At!.Value.Y.ShouldBe((1.2 + 0.927) / 2, 0.05);
        forecast.Vents[0].ArrivalTime.ShouldBeNull();
        forecast.DrySpots.ShouldBeEmpty();
        forecast.MassBalanceError.ShouldBeLessThan(1e-9);
    }

    [Fact]
    public void Predict_WallLowerThanTheClimb_FillsAndTellsNoHeight()
    {
        Forecast forecast = Predict(Wall(0.8));

        forecast.Outcome.ShouldBe(Outcome.Fills);
        forecast.HeightReached.ShouldBeNull();

        // The last row fills evenly; its squares are full within a hundredth of the fill of each other.
        forecast.Vents[0].ArrivalTime!.Value.ShouldBe(forecast.FillTime!.Value, 1e-2 * forecast.FillTime.Value);
    }

    [Fact]
    public void Predict_PotTooLowToLiftAnything_FillsNothing()
    {
        Panel wall = Wall(0.8);
        Forecast forecast = Predict(wall with { Feeds = [wall.Feeds[0] with { Pot = "pail" }], Pots = [new Pot("pail", -1)] });

        forecast.Outcome.ShouldBe(Outcome.StopsShort);
        forecast.FilledFraction.ShouldBe(0);
        forecast.HeightReached.ShouldBe(0);
    }

    [Fact]
    public void Predict_OtherClothOnASlope_StretchesTheClockAlone()
    {
        // ρg/Δp holds no permeability: a factor on all cloth is a factor on the clock with a slope too, so the likely band stays exact.
        Panel wall = Wall(0.8);
        Zone quick = wall.Zones[0] with { Permeability = new Permeability(3e-10, 3e-10, 3e-10, 0) };
        Predict(wall with { Zones = [quick] }).FillTime!.Value.ShouldBe(Predict(wall).FillTime!.Value / 3, 1e-6 * Predict(wall).FillTime!.Value);
    }

    private static Forecast Predict(Panel panel) => Forecaster.Predict(panel, Slow, Weak, new Goals(), 1.5);

    private static Panel Wall(double height) => TestPanels.Panel(
        TestPanels.Rectangle(0, 0, 0.2, height), 0.05, [TestPanels.Cloth],
        [TestPanels.Feed(TestPanels.Path((0, 0), (0.2, 0)))], TestPanels.Vent(TestPanels.Path((0, height), (0.2, height)))) with
    {
        Slope = new Slope(Math.PI / 2, Math.PI / 2),
    };
}

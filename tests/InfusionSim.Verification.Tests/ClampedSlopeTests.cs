using InfusionSim.Physics.Clamps;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Vacuum;
using InfusionSim.Verification.Tests.Accuracy;
using InfusionSim.Verification.Tests.ClosedForms;
using InfusionSim.Verification.Tests.Settings;

namespace InfusionSim.Verification.Tests;

/// <summary>Fills up a wall while clamps are turned and the vacuum is changed.</summary>
public sealed class ClampedSlopeTests
{
    private const string Source = "front with weight (Washburn 1921, from memory), derived";
    private const double Width = 0.01;

    // 20 kPa lift the reference resin by 1.854 m.
    private static readonly Bag Bag = new(Pressure: 80e3, Ambient: 100e3);

    private static readonly double Lift = SuctionHead.HighestLift(Reference.Resin.Density, Bag.Ambient - Bag.Pressure);

    [Fact]
    public void FillTime_UpAWallWithASecondFeedOpenedAtAMark_IsThatOfTwoFrontsInTurn()
    {
        // Source: from the second feed at the height a the front runs with H − a of its own. Case: L = 1 m, a = 0.4 m,
        // both feeds from pots level with the lower one.
        const double At = 0.4;
        double expected = TimeOf(At, Lift) + TimeOf(1 - At, Lift - At);
        Panel wall = Wall() with
        {
            Feeds = [Feed("F1", 0), Feed("F2", At) with { Clamp = new Clamp(0, [new ClampStep(new WhenReached("M"), 1)]) }],
            TimingMarks = [new TimingMark("M", new(At, Width / 2))],
        };

        // Tolerance 0.1 %: the mark is reached to within a thousandth of the fill.
        Forecast forecast = Chain.Predict(wall, bag: Bag);
        new AccuracyRecord("up a wall, second feed opened at a mark", Source, expected, forecast.FillTime!.Value, "s", Chain.GridOf(forecast.Map.Problem))
            .ShouldHold(1e-3);
    }

    [Theory]
    [InlineData(70e3, 1e-4)]
    [InlineData(85e3, 1e-3)]
    public void FillTime_UpAWallWithTheVacuumChangedOnTheWay_IsThatOfBothDrives(double pressure, double tolerance)
    {
        // Source: t = (φμ/(Kρg)) [−x − H ln(1 − x/H)] from one height to the next, H that of the drive between.
        // Case: 20 kPa up to 0.5 m, then 30 or 15 kPa.
        const double Turned = 0.5;
        double lift = SuctionHead.HighestLift(Reference.Resin.Density, Bag.Ambient - pressure), first = TimeOf(Turned, Lift);
        double expected = first + TimeOf(1, lift) - TimeOf(Turned, lift);
        Forecast forecast = Chain.Predict(Wall(), bag: Bag with { Steps = [new BagStep(new AtTime(first), pressure)] });

        // Tolerance 0.01 %, as for the wall without a change; 0.1 % where the front comes to 72 % of the height of its rest, and
        // the march takes longer steps from the end of the level fill on (without a change it is 0.075 % off there).
        new AccuracyRecord($"up a wall, {(Bag.Ambient - pressure) / 1e3} kPa from half way", Source, expected, forecast.FillTime!.Value, "s", Chain.GridOf(forecast.Map.Problem))
            .ShouldHold(tolerance);
    }

    private static double TimeOf(double height, double lift) =>
        SlopingFront.ClockAt(height, 1 / lift, Reference.Permeability, Reference.Porosity)
        * Reference.Viscosity / SuctionHead.Drop(Reference.Resin.Density, lift);

    private static Feed Feed(string name, double at) => new(name, new LinePath([new(at, 0), new(at, Width)]), 0.012);

    private static Panel Wall() => Chain.ReferencePanel(
        Shapes.Rectangle(1, Width), Width, new LinePath([new(0, 0), new(0, Width)]), new LinePath([new(1, 0), new(1, Width)])) with
    {
        Slope = new Slope(0, Math.PI / 2),
    };
}

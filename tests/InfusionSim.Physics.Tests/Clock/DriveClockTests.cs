using InfusionSim.Physics.Clock;

namespace InfusionSim.Physics.Tests.Clock;

public class DriveClockTests
{
    private static readonly Resin Thin = new(Viscosity: 0.2, GelTime: 3600, MixToOpen: 360, Density: 1100);

    private static readonly Bag Tight = new(Pressure: 1325, Ambient: 101325);

    [Fact]
    public void ClockAt_ConstantViscosityAndPressure_RunsAtPressureOverViscosity()
    {
        DriveClock clock = new(Thin, Tight);
        clock.ClockAt(10).ShouldBe(10 * 1e5 / 0.2, 1e-6);
        clock.TimeAt(clock.ClockAt(123.4)).ShouldBe(123.4, 1e-9);
    }

    [Fact]
    public void GelTime_MixedBeforeOpening_CountsFromOpening()
    {
        DriveClock clock = new(Thin, Tight);
        clock.GelTime.ShouldBe(3240);
        clock.GelClock.ShouldBe(clock.ClockAt(3240));
    }

    [Fact]
    public void GelClock_GelledBeforeOpening_IsZero() =>
        new DriveClock(Thin with { MixToOpen = 4000 }, Tight).GelClock.ShouldBe(0);

    [Fact]
    public void TimeAt_Never_StaysNever() => new DriveClock(Thin, Tight).TimeAt(double.PositiveInfinity).ShouldBe(double.PositiveInfinity);

    [Fact]
    public void Constructor_NoPressureDifference_IsRefused() =>
        Should.Throw<ArgumentException>(() => new DriveClock(Thin, new Bag(101325, 101325)));

    [Fact]
    public void Constructor_NoViscosity_IsRefused() =>
        Should.Throw<ArgumentOutOfRangeException>(() => new DriveClock(Thin with { Viscosity = 0 }, Tight));
}

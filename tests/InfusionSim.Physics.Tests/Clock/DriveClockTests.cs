using InfusionSim.Physics.Clamps;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Resins;

namespace InfusionSim.Physics.Tests.Clock;

public class DriveClockTests
{
    private static readonly Resin Thin = new(viscosity: 0.2, gelTime: 3600, mixToOpen: 360, density: 1100);

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
    public void TimeAt_AfterGel_IsNever()
    {
        DriveClock clock = new(Thin, Tight);
        clock.TimeAt(clock.GelClock).ShouldBe(3240, 1e-9);
        clock.TimeAt(clock.GelClock * 1.01).ShouldBe(double.PositiveInfinity);
        clock.ClockAt(4000).ShouldBe(clock.GelClock);
        clock.RateAt(4000).ShouldBe(0);
    }

    [Theory]
    [InlineData(5e-4, 6250, 1961.6585060234528)]
    [InlineData(5e-4, 1000, 210.72103131565)]
    public void TimeAt_ViscosityThatGrowsExponentially_FollowsTheClosedForm(double growth, double fluidity, double time)
    {
        DriveClock clock = new(Thin with { Viscosity = new Growing(0.2, growth), MixToOpen = 0, Gel = new StatedGel(1e5) }, Tight);
        clock.TimeAt(1e5 * fluidity).ShouldBe(time, 1e-9 * time);
        clock.ClockAt(time).ShouldBe(1e5 * fluidity, 1e-9 * 1e5 * fluidity);
        clock.ViscosityAt(time).ShouldBe(0.2 * Math.Exp(growth * time), 1e-12);
        clock.RateAt(time).ShouldBe(1e5 / (0.2 * Math.Exp(growth * time)), 1e-6);
    }

    [Fact]
    public void TimeAt_ViscosityThatGrowsTooFast_NeverComes() =>
        new DriveClock(Thin with { Viscosity = new Growing(0.2, 1e-3), Gel = new StatedGel(1e6) }, Tight).TimeAt(1e5 * 6250).ShouldBe(double.PositiveInfinity);

    [Fact]
    public void ClockAt_StepOfTheBagAtAMinute_RunsSlowerFromThen()
    {
        DriveClock clock = new(Thin, Tight with { Steps = [new BagStep(new AtTime(100), 51325)] });
        clock.ClockAt(100).ShouldBe(5e7, 1e-3);
        clock.ClockAt(300).ShouldBe(5e7 + 5e7, 1e-3);
        clock.TimeAt(7.5e7).ShouldBe(200, 1e-9);
        clock.DrivingPressureAt(99).ShouldBe(1e5);
        clock.DrivingPressureAt(100).ShouldBe(5e4);
        clock.GelClock.ShouldBe(5e7 + 2.5e5 * 3140, 1e-3);
    }

    [Fact]
    public void ClockAt_StepsAtAPlaceAndAMinute_AreMadeAsTheyCome()
    {
        WhenReached mark = new("M1");
        Bag bag = Tight with { Steps = [new BagStep(new AtTime(500), 1325), new BagStep(mark, 51325)] };
        DriveClock clock = new(Thin, bag, moment => moment == mark ? 1e8 : double.PositiveInfinity);
        clock.TimeAt(1e8).ShouldBe(200, 1e-9);
        clock.ClockAt(500).ShouldBe(1e8 + 2.5e5 * 300, 1e-3);
        clock.ClockAt(600).ShouldBe(1e8 + 2.5e5 * 300 + 5e5 * 100, 1e-3);
    }

    [Fact]
    public void ClockAt_StepThatChangesNothing_IsTheSameClock()
    {
        Resin growing = Thin with { Viscosity = new Growing(0.2, 5e-4) };
        DriveClock plain = new(growing, Tight), split = new(growing, Tight with { Steps = [new BagStep(new AtTime(777), 1325)] });
        foreach (double time in new[] { 0, 776.9, 777, 1000, 3000.0 }) split.ClockAt(time).ShouldBe(plain.ClockAt(time), 1e-9 * plain.GelClock);
    }

    [Fact]
    public void TimeAt_Never_StaysNever() => new DriveClock(Thin, Tight).TimeAt(double.PositiveInfinity).ShouldBe(double.PositiveInfinity);

    [Fact]
    public void Constructor_NoPressureDifference_IsRefused() =>
        Should.Throw<ArgumentException>(() => new DriveClock(Thin, new Bag(101325, 101325)));

    [Fact]
    public void Constructor_NoViscosity_IsRefused() =>
        Should.Throw<ArgumentOutOfRangeException>(() => new DriveClock(Thin with { Viscosity = new ConstantViscosity(0) }, Tight));

    /// <summary>Doubles every so often: μ₀ exp(growth · time).</summary>
    private sealed record Growing(double Start, double Growth) : ViscosityModel
    {
        public override ViscosityCourse Along(TemperatureCourse? temperature, double mixToOpen) => new Course(this);

        private sealed class Course(Growing model) : ViscosityCourse
        {
            public override double At(double time) => model.Start * Math.Exp(model.Growth * time);
        }
    }
}

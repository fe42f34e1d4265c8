using InfusionSim.Physics.Resins;

namespace InfusionSim.Physics.Tests.Resins;

/// <summary>The degree of cure against closed forms and against tables computed independently with the classical Runge–Kutta method.</summary>
public class CureCourseTests
{
    private static CureKinetics Level(double first, double second, double self, double rest) => new(new(first, 0), new(second, 0), self, rest, 0, 0.577);

    // m = n = 1: α = (exp(St) − 1)/(exp(St) + k₂/k₁), S = k₁ + k₂, by separation of the variables.
    [Fact]
    public void ConversionAt_OrdersOfOne_FollowsTheClosedForm()
    {
        CureCourse course = new(Level(1e-4, 1e-3, 1, 1), SampleResins.At(25), 0);
        course.ConversionAt(2000).ShouldBe(0.4218138, 1e-7);
        course.TimeOf(0.577).ShouldBe(2520.804, 1e-3);
        foreach (double time in new[] { 10, 333.3, 1234.5, 4000 })
        {
            double grown = Math.Exp(1.1e-3 * time);
            course.ConversionAt(time).ShouldBe((grown - 1) / (grown + 10), 1e-9);
        }
    }

    [Theory]
    [InlineData(1, 0.8646647167633873)]
    [InlineData(2, 2.0 / 3)]
    public void ConversionAt_RestAlone_FollowsTheClosedForm(double order, double conversion) =>
        new CureCourse(Level(1e-3, 0, 1, order), SampleResins.At(25), 0).ConversionAt(2000).ShouldBe(conversion, 1e-9);

    // The table is printed to a tenth of a second, above three hours to a second.
    [Theory]
    [InlineData(20, 4066.7, 8513.5, 13986.6, 29510)]
    [InlineData(25, 2819.8, 5943.4, 9805.8, 20781)]
    [InlineData(40, 1007.3, 2164.3, 3614.5, 7757.9)]
    [InlineData(60, 294.3, 647.2, 1097.1, 2391.6)]
    public void TimeOf_InventedEpoxy_IsTheTable(double celsius, double tenth, double threeTenths, double gel, double nineTenths)
    {
        CureCourse course = new(SampleResins.InventedEpoxy, SampleResins.At(celsius), 0);
        course.TimeOf(0.1).ShouldBe(tenth, 0.1);
        course.TimeOf(0.3).ShouldBe(threeTenths, 0.1);
        course.TimeOf(0.577).ShouldBe(gel, 0.1);
        course.TimeOf(0.9).ShouldBe(nineTenths, nineTenths > 1e4 ? 0.6 : 0.1);
    }

    [Theory]
    [InlineData(80, 1.0723e-4)]
    [InlineData(90, 5.15374e-4)]
    [InlineData(100, 2.277113e-3)]
    public void RateAt_PublishedPolyester_IsTheTable(double celsius, double rate) =>
        new ArrheniusRate(6.167e20, 1.674e5).At(celsius + GasConstant.ZeroCelsius).ShouldBe(rate, 1e-4 * rate);

    [Fact]
    public void RateAt_PublishedPolyester_PeaksWhereTheOrdersSay()
    {
        CureKinetics polyester = SampleResins.PublishedPolyester;
        double peak = 0.524 / (0.524 + 1.476), warm = 90 + GasConstant.ZeroCelsius;
        polyester.RateAt(peak, warm).ShouldBe(1.631412e-4, 1e-4 * 1.631412e-4);
        polyester.RateAt(peak - 0.01, warm).ShouldBeLessThan(polyester.RateAt(peak, warm));
        polyester.RateAt(peak + 0.01, warm).ShouldBeLessThan(polyester.RateAt(peak, warm));
    }

    // Warm first and cold later is the cold cure with a head start, and every kink is met exactly.
    [Fact]
    public void ConversionAt_TemperatureThatFalls_GoesOnFromWhatWasReached()
    {
        TemperatureCourse falling = new([0, 1000, 1000.001], [313.15, 313.15, 293.15]);
        CureCourse course = new(SampleResins.InventedEpoxy, falling, 600);
        double reached = new CureCourse(SampleResins.InventedEpoxy, SampleResins.At(40), 600).ConversionAt(1000);
        course.ConversionAt(1000).ShouldBe(reached, 1e-10);
        CureCourse cold = new(SampleResins.InventedEpoxy with { StartConversion = reached }, SampleResins.At(20), 0);
        course.ConversionAt(3000).ShouldBe(cold.ConversionAt(2000), 1e-6);
    }

    [Fact]
    public void ConversionAt_MixedEarlier_IsOlderByThat() =>
        new CureCourse(SampleResins.InventedEpoxy, SampleResins.At(25), 360).ConversionAt(1000)
            .ShouldBe(new CureCourse(SampleResins.InventedEpoxy, SampleResins.At(25), 0).ConversionAt(1360), 1e-10);

    [Fact]
    public void TimeOf_CureThatNeverStarts_IsNever() =>
        new CureCourse(SampleResins.PublishedPolyester with { StartConversion = 0 }, SampleResins.At(90), 0).TimeOf(0.5).ShouldBe(double.PositiveInfinity);
}

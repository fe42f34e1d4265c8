using InfusionSim.Physics.Resins;

namespace InfusionSim.Physics.Tests.Resins;

/// <summary>Every model against its formula, worked out apart; the set of numbers is invented.</summary>
public class ViscosityModelTests
{
    private const double Tolerance = 1e-6;

    private static readonly ThermalViscosity Warm = new(0.3, new ArrheniusLaw(298.15, 50e3));

    private static readonly ThermalRate Rise = ThermalRate.Of(new ArrheniusRate(1e6, 55e3), 298.15);

    private static readonly DualArrheniusViscosity Dual = new(Warm, Rise);

    [Theory]
    [InlineData(15, 0.604111)]
    [InlineData(20, 0.423181)]
    [InlineData(25, 0.30)]
    [InlineData(30, 0.215102)]
    [InlineData(40, 0.114165)]
    public void ThermalViscosity_ArrheniusLaw_IsTheTable(double celsius, double viscosity) =>
        Along(Warm, SampleResins.At(celsius)).At(0).ShouldBe(viscosity, Tolerance * Math.Max(1, viscosity));

    // μ = A exp(E/RT) with E = 50 kJ/mol through 0.3 Pa·s at 25 °C.
    [Fact]
    public void Fit_PointsOfOneLine_FindsTheLine()
    {
        double[] temperatures = [288.15, 293.15, 303.15, 313.15];
        ViscosityFit fit = ViscosityFit.Of(temperatures, [.. temperatures.Select(Warm.At)]);
        fit.Residual.ShouldBeLessThan(1e-12);
        fit.Model.At(298.15).ShouldBe(0.3, 1e-12);
        ((ArrheniusLaw)fit.Model.Law).Activation.ShouldBe(50e3, 1e-6);
        (fit.Model.At(298.15) / Math.Exp(50e3 / (8.314462618 * 298.15))).ShouldBe(5.217954e-10, 1e-6 * 5.217954e-10);
        (fit.Coldest, fit.Warmest).ShouldBe((288.15, 313.15));
    }

    [Fact]
    public void Fit_PointOffTheLine_ShowsHowFar()
    {
        ViscosityFit fit = ViscosityFit.Of([288.15, 298.15, 308.15], [Warm.At(288.15), Warm.At(298.15) * 1.1, Warm.At(308.15)]);
        fit.Residual.ShouldBe(0.065, 0.005);
        fit.Model.At(298.15).ShouldBeInRange(0.3, 0.33);
    }

    [Fact]
    public void ThermalViscosity_HalvingLaw_HalvesEveryTenDegrees()
    {
        ThermalViscosity thumb = new(0.3, new HalvingLaw(298.15));
        thumb.At(308.15).ShouldBe(0.15, 1e-12);
        thumb.At(293.15).ShouldBe(0.3 * Math.Sqrt(2), 1e-12);
        Along(thumb, null).At(0).ShouldBe(0.3);
    }

    [Theory]
    [InlineData(25, 1800, 0.455026)]
    [InlineData(25, 5202.353, 1)]
    [InlineData(25, 2995.081, 0.6)]
    [InlineData(25, 25101.24, 100)]
    [InlineData(20, 0, 0.423181)]
    [InlineData(20, 5425.058, 1)]
    [InlineData(40, 0, 0.114165)]
    [InlineData(40, 3239.794, 1)]
    public void DualArrhenius_OneTemperature_IsTheTable(double celsius, double time, double viscosity) =>
        Along(Dual, SampleResins.At(celsius)).At(time).ShouldBe(viscosity, 2e-6 * Math.Max(0.5, viscosity));

    [Theory]
    [InlineData(20, 1.585153e-4)]
    [InlineData(25, 2.314285e-4)]
    [InlineData(40, 6.698303e-4)]
    public void DualArrhenius_Rate_IsTheTable(double celsius, double rate) =>
        (Rise.Rate / Rise.Law.FactorAt(celsius + 273.15)).ShouldBe(rate, Tolerance * rate);

    // ∫k dt over the ramp is 0.748881, summed up independently.
    [Fact]
    public void DualArrhenius_Ramp_IsTheTable()
    {
        TemperatureCourse ramp = new([0, 1800], [298.15, 313.15]);
        ViscosityCourse course = Along(Dual, ramp);
        course.At(1800).ShouldBe(0.241416, 1e-6);
        Math.Log(course.At(1800) / Warm.At(313.15)).ShouldBe(0.748881, 1e-6);
        course.At(2800).ShouldBe(course.At(1800) * Math.Exp(6.698303e-4 * 1000), 1e-6);
    }

    [Fact]
    public void DualArrhenius_MixedEarlier_IsOlderByThat() =>
        Dual.Along(SampleResins.At(25), 600).At(1200).ShouldBe(Dual.Along(SampleResins.At(25), 0).At(1800), 1e-12);

    [Theory]
    [InlineData(0.1, 1.338721)]
    [InlineData(0.3, 3.482202)]
    [InlineData(0.5, 36.0)]
    public void CastroMacosko_Thickening_IsTheTable(double conversion, double times) =>
        new CastroMacoskoViscosity(Warm, SampleResins.InventedEpoxy with { GelConversion = 0.6 }, 1.5, 1).ThickeningAt(conversion).ShouldBe(times, 1e-6);

    [Fact]
    public void CastroMacosko_AtTheGelPoint_FlowsNoMore()
    {
        CastroMacoskoViscosity model = new(Warm, SampleResins.InventedEpoxy, 1.5, 1);
        ViscosityCourse course = Along(model, SampleResins.At(25));
        model.ThickeningAt(0.577).ShouldBe(double.PositiveInfinity);
        course.KnownUntil.ShouldBe(9805.8, 0.1);
        course.At(0).ShouldBe(0.3, 1e-12);
        course.At(2819.8).ShouldBe(0.3 * Math.Pow(0.577 / 0.477, 1.6), 1e-4);
        course.At(10_000).ShouldBe(double.PositiveInfinity);
    }

    [Fact]
    public void MeasuredCurve_PointsOfAnExponential_IsTheExponential()
    {
        double[] times = [0, 600, 1200, 2400];
        MeasuredViscosity curve = new(times, [.. times.Select(time => 0.3 * Math.Exp(time * 5e-4))]);
        ViscosityCourse course = curve.Along(null, 300);
        foreach (double time in new[] { -300, 0, 450, 1111, 2100.0 }) course.At(time).ShouldBe(0.3 * Math.Exp((time + 300) * 5e-4), 1e-9);
        course.KnownUntil.ShouldBe(2100);
    }

    [Fact]
    public void MeasuredCurve_AnyPoints_NeverFallsBetweenThem()
    {
        ViscosityCourse course = new MeasuredViscosity([0, 60, 120, 1000, 1010], [0.2, 0.2, 0.25, 0.26, 5]).Along(null, 0);
        double before = 0;
        for (double time = 0; time <= 1010; time += 1)
        {
            double now = course.At(time);
            now.ShouldBeGreaterThanOrEqualTo(before * (1 - 1e-12));
            before = now;
        }
    }

    [Fact]
    public void MeasuredCurve_Falling_IsRefused() =>
        Should.Throw<ArgumentException>(() => new MeasuredViscosity([0, 60, 120], [0.3, 0.25, 0.4]));

    [Theory]
    [InlineData(1, 0.577350)]
    [InlineData(0.9, 0.608581)]
    public void GelPoint_DiepoxideAndDiamine_IsTheTable(double ratio, double conversion) => GelPoint.Of(ratio, 2, 4).ShouldBe(conversion, Tolerance);

    [Theory]
    [InlineData(0.5, -4.2857)]
    [InlineData(0.577, 4.1266)]
    [InlineData(0.8, 36.9231)]
    [InlineData(0.9, 57.8261)]
    public void GlassTransition_InventedEpoxy_IsTheTable(double conversion, double celsius) =>
        (new GlassTransition(233.15, 358.15, 0.4).At(conversion) - 273.15).ShouldBe(celsius, 5e-5);

    [Theory]
    [InlineData(450e3, 1900, 236.84)]
    [InlineData(350e3, 1900, 184.21)]
    public void CureHeat_AdiabaticRise_IsTheTable(double heat, double capacity, double rise) => new CureHeat(heat, capacity).AdiabaticRise.ShouldBe(rise, 5e-3);

    private static ViscosityCourse Along(ViscosityModel model, TemperatureCourse? temperature) => model.Along(temperature, 0);
}

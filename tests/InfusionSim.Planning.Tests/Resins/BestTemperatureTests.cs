using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Resins;
using InfusionSim.Physics.Vacuum;
using InfusionSim.Planning.Resins;

namespace InfusionSim.Planning.Tests.Resins;

public sealed class BestTemperatureTests
{
    private const double Reference = 298.15;

    private const double ViscosityActivation = 40_000, GelActivation = 60_000;

    private static readonly TemperatureRange Range = new(288.15, 313.15);

    // An invented resin: 0.2 Pa·s and an hour to gel at 25 °C, both after Arrhenius.
    private static Resin Warm(double gelTime = 3600) => new(
        new ThermalViscosity(
            0.2, new ArrheniusLaw(Reference, ViscosityActivation)), new ThermalGel(gelTime, new ArrheniusLaw(Reference, GelActivation)), 0, 1100)
    {
        Temperature = new TemperatureCourse(Reference),
    };

    private static Resin WithStyrene(double moleFraction) =>
        Warm(gelTime: 36_000) with { Volatiles = [new VolatileComponent(VolatileKind.Styrene, moleFraction)] };

    private static BestTemperature? Best(Resin resin, double wishedMargin, TemperatureRange? range) => ResinComparison
        .Of(
            ResinPanels.Strip(), [new ResinCandidate(resin, ResinPanels.Mixing, range)], ResinPanels.Bag, new Goals(SmallestGelMargin: wishedMargin),
            1.5)[0].BestTemperature;

    [Fact]
    public void Best_MarginThatHoldsUpToATemperature_IsThatTemperature()
    {
        // Fill time T(θ) = 1250 s · exp(Eμ/R·(1/T − 1/T0)), gel time 3600 s · exp(Eg/R·(1/T − 1/T0)), so the margin is 2.88 · exp((Eg − Eμ)/R·(1/T − 1/T0)):
        // it falls to 2 at 1/T = 1/T0 + R ln(2/2.88)/(Eg − Eμ) (derived).
        double expected = 1 / (1 / Reference + 8.314462618 * Math.Log(2 / 2.88) / (GelActivation - ViscosityActivation));
        double fill = 1250 * Math.Exp(ViscosityActivation / 8.314462618 * (1 / expected - 1 / Reference));

        BestTemperature best = Best(Warm(), 2, Range)!;

        best.KeepsMargin.ShouldBeTrue();
        best.Temperature.ShouldBe(expected, 0.02);
        best.Temperature.ShouldBeLessThanOrEqualTo(expected + 1e-9);
        best.FillTime!.Value.ShouldBe(fill, 2e-3 * fill);
        best.GelMargin.ShouldBeInRange(2, 2.002);
    }

    [Fact]
    public void Best_MarginThatHoldsEverywhere_IsTheWarmest()
    {
        BestTemperature best = Best(Warm(gelTime: 36_000), 2, Range)!;

        (best.KeepsMargin, best.Temperature).ShouldBe((true, Range.Highest));
        (best.Lowest, best.Highest).ShouldBe((Range.Lowest, Range.Highest));
    }

    [Fact]
    public void Best_MarginThatHoldsNowhere_IsTheLargestMarginAndSaysSo()
    {
        BestTemperature best = Best(Warm(gelTime: 600), 2, Range)!;

        // The margin falls with warmth, so it is largest where it is coldest: 0.48 · exp(2000·ln …) stays below 1 there.
        (best.KeepsMargin, best.Temperature).ShouldBe((false, Range.Lowest));
        best.GelMargin.ShouldBeLessThan(2);
        best.FillTime.ShouldBeNull();
    }

    [Fact]
    public void Best_ResinThatThickensFasterWhereItIsWarm_LiesInside()
    {
        Resin resin = new(
            new DualArrheniusViscosity(
                new ThermalViscosity(0.2, new ArrheniusLaw(Reference, 40_000)), new ThermalRate(1e-3, new ArrheniusLaw(Reference, 120_000))),
            new StatedGel(36_000), 0, 1100)
        {
            Temperature = new TemperatureCourse(Reference),
        };

        BestTemperature best = Best(resin, 1, Range)!;

        best.KeepsMargin.ShouldBeTrue();
        best.Temperature.ShouldBeInRange(Range.Lowest + 1, Range.Highest - 1);
        foreach (double off in (double[])[-0.5, 0.5]) FillTimeAt(resin, best.Temperature + off).ShouldBeGreaterThan(best.FillTime!.Value);
    }

    // Styrene, mole fraction 1, at 13.25 mbar: log10(p/bar) = 4.0593 − 1459.909/(T − 59.551) gives 1459.909/(4.0593 − log10(0.01325)) + 59.551 = 305.448 K.
    [Fact]
    public void Best_VolatileThatBoils_IsAsWarmAsItMayBe()
    {
        double expected = 1459.909 / (4.0593 - Math.Log10(0.01325)) + 59.551;
        BestTemperature best = Best(WithStyrene(1), 2, Range)!;

        (best.KeepsMargin, best.IsBoundByBoiling, best.BoilsThroughout).ShouldBe((true, true, false));
        best.Temperature.ShouldBe(expected, 1e-3);
        best.Highest.ShouldBe(best.Temperature);
        new Volatiles(WithStyrene(1).Volatiles, best.Temperature).BubblePressure.ShouldBeLessThanOrEqualTo(ResinPanels.Bag.Pressure);
    }

    [Fact]
    public void Best_VolatileThatBoilsFartherUp_IsBoundByTheMargin()
    {
        BestTemperature free = Best(Warm(), 2, Range)!, best = Best(Warm() with { Volatiles = WithStyrene(0.67).Volatiles }, 2, Range)!;

        best.IsBoundByBoiling.ShouldBeTrue();
        best.Temperature.ShouldBe(free.Temperature, 0.02);
        best.Highest.ShouldBeGreaterThan(best.Temperature + 0.5);
        free.IsBoundByBoiling.ShouldBeFalse();
    }

    [Fact]
    public void Best_VolatileThatBoilsInTheColdToo_IsNoAdvice()
    {
        Resin resin = Warm(gelTime: 36_000) with { Volatiles = [new VolatileComponent(VolatileKind.Water, 1)] };
        BestTemperature best = Best(resin, 2, Range)!;

        (best.KeepsMargin, best.BoilsThroughout, best.Temperature).ShouldBe((false, true, Range.Lowest));
    }

    [Fact]
    public void Best_CardThatKnowsOneViscosity_IsNotTold() => Best(new Resin(0.2, 36_000, 0, 1100), 1, null).ShouldBeNull();

    // μ rises as μ0·exp(kt), so ∫ dt/μ = (1 − exp(−kt))/(k μ0) and t = −ln(1 − k μ0 θ/Δp)/k (derived).
    private static double FillTimeAt(Resin resin, double temperature)
    {
        DualArrheniusViscosity model = (DualArrheniusViscosity)resin.Viscosity;
        double start = model.Start.At(temperature), rate = model.Rise.Rate * Math.Exp(120_000 / 8.314462618 * (1 / Reference - 1 / temperature));
        double left = 1 - rate * start * ResinPanels.FullClock / 1e5;
        return left > 0 ? -Math.Log(left) / rate : double.PositiveInfinity;
    }
}

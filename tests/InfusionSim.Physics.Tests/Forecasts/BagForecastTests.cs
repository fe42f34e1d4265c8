using InfusionSim.Physics.Clamps;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Resins;
using InfusionSim.Physics.Vacuum;

namespace InfusionSim.Physics.Tests.Forecasts;

public class BagForecastTests
{
    private const double Warm = 303.15, Pores = 2e-4;

    private static readonly Bag Deep = new(500, 101_325);

    private static readonly Resin Styrenated = new(0.2, 3600, 0, 1100)
    {
        Temperature = new TemperatureCourse([0, 600], [Warm - 10, Warm]),
        Volatiles = [new(VolatileKind.Styrene, 0.6)],
    };

    [Fact]
    public void MayBoil_VacuumDeeperThanThePartialPressure_IsSaidWithThePressureToStayAbove()
    {
        // Styrene at 30 °C: 1164.708 Pa, of which 0.6 are 698.8 Pa.
        BagForecast judged = BagForecast.Of(Deep, Styrenated, null, Pores);
        judged.MayBoil.ShouldBeTrue();
        judged.BoilsBelow!.Value.ShouldBe(0.6 * 1164.708, 1e-2);
        judged.BoilingIsExtrapolated.ShouldBeTrue();
    }

    [Fact]
    public void MayBoil_VacuumThatStaysAbove_IsNotSaid() =>
        BagForecast.Of(Deep with { Pressure = 700 }, Styrenated, null, Pores).MayBoil.ShouldBeFalse();

    [Fact]
    public void MayBoil_LaterStepDeeper_IsSaid() =>
        BagForecast.Of(new Bag(5000, 101_325) { Steps = [new BagStep(new WhenFull(), 500)] }, Styrenated, null, Pores).MayBoil.ShouldBeTrue();

    [Fact]
    public void MayBoil_NothingNamedThatBoils_IsNotSaid()
    {
        BagForecast judged = BagForecast.Of(Deep, Styrenated with { Volatiles = [] }, null, Pores);
        judged.MayBoil.ShouldBeFalse();
        judged.BoilsBelow.ShouldBeNull();
    }

    [Fact]
    public void MayBoil_NoTemperatureGiven_CannotBeSaid() =>
        BagForecast.Of(Deep, Styrenated with { Temperature = null }, null, Pores).BoilsBelow.ShouldBeNull();

    // 101,325 Pa in 2e-4 m³ at 0.02 Pa·m³/s: 1013.25 s.
    [Fact]
    public void PoresFilled_Leak_IsThePressureOfTheShopTimesTheirVolumeOverIt()
    {
        BagForecast.Of(Deep with { Leak = new GasLeak(0.02) }, Styrenated, null, Pores).PoresFilledIn!.Value.ShouldBe(1013.25, 1e-9);
        BagForecast.Of(Deep with { Leak = new GasLeak(0) }, Styrenated, null, Pores).PoresFilledIn.ShouldBeNull();
        BagForecast.Of(Deep, Styrenated, null, Pores).PoresFilledIn.ShouldBeNull();
    }

    [Fact]
    public void Held_PumpAndLeak_IsTheLowestPressurePlusTheLeakOverTheSpeed()
    {
        Bag bag = Deep with { Leak = new GasLeak(0.02), Pump = new VacuumPump(1e-3, 100) };
        BagForecast judged = BagForecast.Of(bag, Styrenated, new DryRegionPressure(1e12), Pores);
        judged.Held.ShouldBe(120);
        judged.DryCloth!.Value.ShouldBe(new DryRegionPressure(1e12).PressureWith(500, new GasLeak(0.02), Warm - 10));
    }

    [Fact]
    public void Held_WithoutALeak_IsNotSaid()
    {
        BagForecast judged = BagForecast.Of(Deep with { Pump = new VacuumPump(1e-3, 100) }, Styrenated, new DryRegionPressure(1e12), Pores);
        judged.Held.ShouldBeNull();
        judged.DryCloth.ShouldBeNull();
    }
}

using InfusionSim.Physics.Vacuum;

namespace InfusionSim.Physics.Tests.Vacuum;

public class GasLeakTests
{
    [Fact]
    public void Leak_InMolesAndAsARise_IsTheSameGas()
    {
        const double Volume = 0.02, Duration = 600, Room = 293.15;
        GasLeak leak = new DropTest(800, Duration, Volume).Leak;
        leak.MolesPerSecond(Room).ShouldBe(GasLeak.MolesPerSecond(Volume, 1000, Room, 1800, Room, Duration), 1e-12);
    }

    [Fact]
    public void MolesPerSecond_CooledMeanwhile_CountsTheCooling() =>
        GasLeak.MolesPerSecond(0.02, 1000, 300, 1000, 290, 600).ShouldBeGreaterThan(0);

    [Fact]
    public void DropTest_ThatCannotBe_IsRefused()
    {
        Should.Throw<ArgumentOutOfRangeException>(() => new DropTest(-1, 600, 0.02).Leak);
        Should.Throw<ArgumentOutOfRangeException>(() => new DropTest(800, 0, 0.02).Leak);
        Should.Throw<ArgumentOutOfRangeException>(() => new DropTest(800, 600, 0).Leak);
        Should.Throw<ArgumentOutOfRangeException>(() => DropTest.RiseOf(new GasLeak(1), -1, 0.02));
        Should.Throw<ArgumentOutOfRangeException>(() => new GasLeak(1).MolesPerSecond(0));
    }

    [Theory]
    [InlineData(-501)]
    [InlineData(9001)]
    [InlineData(double.NaN)]
    public void StandardAtmosphere_OutsideItsRange_IsRefused(double altitude) =>
        Should.Throw<ArgumentOutOfRangeException>(() => StandardAtmosphere.PressureAt(altitude));
}

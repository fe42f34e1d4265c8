using InfusionSim.Physics.Vacuum;

namespace InfusionSim.Physics.Tests.Vacuum;

public class VacuumPumpTests
{
    private static readonly VacuumPump Pump = new(Speed: 1e-3, Lowest: 100);

    [Fact]
    public void TimeToDraw_AgainstALeak_IsThatOfAPumpWithAHigherLowestPressure()
    {
        var leak = new GasLeak(0.05);
        double held = Pump.HeldAgainst(leak);
        held.ShouldBe(150);
        Pump.TimeToDraw(0.02, 1e5, 1000, leak).ShouldBe(new VacuumPump(1e-3, held).TimeToDraw(0.02, 1e5, 1000), 1e-9);
    }

    [Theory]
    [InlineData(100)]
    [InlineData(50)]
    public void TimeToDraw_AsDeepAsItHoldsOrDeeper_IsNever(double wanted) =>
        Pump.TimeToDraw(0.02, 1e5, wanted).ShouldBe(double.PositiveInfinity);

    [Fact]
    public void TimeToDraw_AlreadyThere_IsZero() => Pump.TimeToDraw(0.02, 1000, 1000).ShouldBe(0);

    [Fact]
    public void TimeToDraw_InTwoParts_IsTheSumOfBoth() =>
        (Pump.TimeToDraw(0.02, 1e5, 5000) + Pump.TimeToDraw(0.02, 5000, 500)).ShouldBe(Pump.TimeToDraw(0.02, 1e5, 500), 1e-9);

    [Fact]
    public void TimeToDraw_NoVolumeOrNoSpeed_IsRefused()
    {
        Should.Throw<ArgumentOutOfRangeException>(() => Pump.TimeToDraw(0, 1e5, 1000));
        Should.Throw<ArgumentOutOfRangeException>(() => (Pump with { Speed = 0 }).TimeToDraw(0.02, 1e5, 1000));
    }
}

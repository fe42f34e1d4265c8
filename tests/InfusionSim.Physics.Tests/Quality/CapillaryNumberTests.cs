using InfusionSim.Physics.Quality;

namespace InfusionSim.Physics.Tests.Quality;

public class CapillaryNumberTests
{
    // From the definition by hand: 0.2 · 1e-3 / 0.035, over cos 30° for the second, 2.5e-3 · 0.035 · cos 30° / 0.2 for the speed.
    [Theory]
    [InlineData(0, 5.714286e-3)]
    [InlineData(30, 6.598289e-3)]
    public void Of_ResinOfFifthOfAPascalSecond_IsDragOverPull(double degrees, double expected) =>
        CapillaryNumber.Of(0.2, 1e-3, new Wetting(0.035, degrees * Math.PI / 180)).ShouldBe(expected, 1e-6 * expected);

    [Fact]
    public void SpeedFor_NumberAmidThePublishedRange_IsTheSpeedThatHasIt()
    {
        Wetting wetting = new(0.035, Math.PI / 6);
        double speed = CapillaryNumber.SpeedFor(2.5e-3, 0.2, wetting);
        speed.ShouldBe(3.788861e-4, 1e-6 * 3.788861e-4);
        CapillaryNumber.Of(0.2, speed, wetting).ShouldBe(2.5e-3, 1e-15);
    }

    [Theory]
    [InlineData(0, 1e-3)]
    [InlineData(0.2, -1e-3)]
    public void Of_ImpossibleViscosityOrSpeed_IsRefused(double viscosity, double speed) =>
        Should.Throw<ArgumentOutOfRangeException>(() => CapillaryNumber.Of(viscosity, speed, new Wetting(0.035)));
}

using InfusionSim.Plots.Panels;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Plots.Tests.Panels;

public class FibreDirectionTests
{
    [Theory]
    [InlineData(2e-10, 1e-10, 30, 30.0)]
    [InlineData(2e-10, 1e-10, -45, -45.0)]
    // The better direction is that of K2, across the angle.
    [InlineData(1e-10, 2e-10, 30, -60.0)]
    [InlineData(2e-10, 1e-10, 210, 30.0)]
    [InlineData(2e-10, 1e-10, 0, null)]
    [InlineData(2e-10, 1e-10, 90, null)]
    [InlineData(1e-10, 1e-10, 30, null)]
    public void Of_Zone_IsTheBetterDirectionOfTurnedCloth(double k1, double k2, double angle, double? expected)
    {
        var zone = new Zone { Permeability = new Permeability { K1M2 = k1, K2M2 = k2, AngleDeg = angle } };

        Same(FibreDirection.Of(zone), expected);
    }

    [Theory]
    // As much one way as the other.
    [InlineData(45, 1, -45, 1, null)]
    // Three plies of four at 45°.
    [InlineData(45, 3, -45, 1, 45.0)]
    public void Of_Plies_IsThatOfThemTogether(double first, int firstCount, double second, int secondCount, double? expected)
    {
        var zone = new Zone { LayUp = new LayUp { Plies = { Ply(first, firstCount), Ply(second, secondCount) } } };

        Same(FibreDirection.Of(zone), expected);
    }

    private static Ply Ply(double angle, int count) =>
        new() { AngleDeg = angle, Count = count, ThicknessMm = 0.5, Permeability = new Permeability { K1M2 = 4e-10, K2M2 = 1e-10 } };

    private static void Same(double? angle, double? expected)
    {
        angle.HasValue.ShouldBe(expected.HasValue);
        (angle ?? 0).ShouldBe(expected ?? 0, 1e-6);
    }
}

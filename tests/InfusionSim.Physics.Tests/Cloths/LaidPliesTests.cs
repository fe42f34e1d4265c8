using CsCheck;
using InfusionSim.Numerics.Lattice;
using InfusionSim.Physics.Cloths;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Tests.Cloths;

public sealed class LaidPliesTests
{
    private static readonly Gen<Ply> AnyPly = Gen.Select(
        Gen.Double[1e-4, 2e-3], Gen.Double[-12, -9], Gen.Double[0, 2], Gen.Double[-Math.PI, Math.PI], Gen.Int[1, 6],
        (thickness, size, ratio, angle, count) => new Ply(
            thickness, new(Math.Pow(10, size + ratio), Math.Pow(10, size), Math.Pow(10, size - 1), angle), count));

    [Fact]
    public void Of_OnePly_IsThePly()
    {
        LaidPlies laid = LaidPlies.Of([Ply(0.3e-3, 4e-10, 1e-10, 1e-12, 30, 5)]);

        laid.Thickness.ShouldBe(1.5e-3, 1e-15);
        ShouldBe(laid.Permeability, 4e-10, 1e-10, 1e-12, 30);
    }

    [Fact]
    public void Of_CrossPly_IsTheMeanAlikeAllRound() =>
        ShouldBe(LaidPlies.Of([Ply(0.3e-3, 4e-10, 1e-10, 1e-12, 37, 2), Ply(0.3e-3, 4e-10, 1e-10, 1e-12, 127, 2)]).Permeability, 2.5e-10, 2.5e-10, 1e-12, 0);

    [Fact]
    public void Of_BalancedBias_LiesAlongItsMiddle()
    {
        // ±30°: Kxy cancels, Kxx = 3.25e-10, Kyy = 1.75e-10 m²; turned by 20° the axis turns with it.
        ShouldBe(LaidPlies.Of([Ply(0.3e-3, 4e-10, 1e-10, 1e-12, 30), Ply(0.3e-3, 4e-10, 1e-10, 1e-12, -30)]).Permeability, 3.25e-10, 1.75e-10, 1e-12, 0);
        ShouldBe(LaidPlies.Of([Ply(0.3e-3, 4e-10, 1e-10, 1e-12, 50), Ply(0.3e-3, 4e-10, 1e-10, 1e-12, -10)]).Permeability, 3.25e-10, 1.75e-10, 1e-12, 20);
        ShouldBe(LaidPlies.Of([Ply(0.3e-3, 4e-10, 1e-10, 1e-12, 120), Ply(0.3e-3, 4e-10, 1e-10, 1e-12, 60)]).Permeability, 3.25e-10, 1.75e-10, 1e-12, 90);
    }

    [Fact]
    public void Of_PliesOfTwoThicknesses_WeighsThePlaneInParallelAndTheDepthInSeries()
    {
        LaidPlies laid = LaidPlies.Of([Ply(1e-3, 6e-10, 2e-10, 1e-12, 0), Ply(0.5e-3, 3e-10, 1e-10, 1e-13, 0, 2)]);

        laid.Thickness.ShouldBe(2e-3, 1e-15);
        ShouldBe(laid.Permeability, 4.5e-10, 1.5e-10, 2e-3 / (1e-3 / 1e-12 + 1e-3 / 1e-13), 0);
    }

    [Fact]
    public void Of_AnyPlies_AddsUpTheirTensors() => AnyPly.Array[1, 8].Sample(plies =>
    {
        LaidPlies laid = LaidPlies.Of(plies);
        PlaneTensor whole = PlaneTensor.Of(laid.Permeability.K1, laid.Permeability.K2, laid.Permeability.Angle);
        PlaneTensor[] own = [.. plies.Select(ply => PlaneTensor.Of(ply.Permeability.K1, ply.Permeability.K2, ply.Permeability.Angle))];
        double[] share = [.. plies.Select(ply => ply.Count * ply.Thickness / laid.Thickness)];

        laid.Permeability.K1.ShouldBeGreaterThanOrEqualTo(laid.Permeability.K2);
        laid.Permeability.K2.ShouldBeGreaterThan(0);
        whole.Xx.ShouldBe(own.Zip(share, (tensor, part) => tensor.Xx * part).Sum(), 1e-12 * whole.Trace);
        whole.Yy.ShouldBe(own.Zip(share, (tensor, part) => tensor.Yy * part).Sum(), 1e-12 * whole.Trace);
        whole.Xy.ShouldBe(own.Zip(share, (tensor, part) => tensor.Xy * part).Sum(), 1e-12 * whole.Trace);
    });

    [Fact]
    public void Of_NoPlies_IsRefused() => Should.Throw<ArgumentOutOfRangeException>(() => LaidPlies.Of([]));

    private static Ply Ply(double thickness, double k1, double k2, double k3, double degrees, int count = 1) =>
        new(thickness, new(k1, k2, k3, degrees * Math.PI / 180), count);

    private static void ShouldBe(Permeability observed, double k1, double k2, double k3, double degrees)
    {
        observed.K1.ShouldBe(k1, 1e-12 * k1);
        observed.K2.ShouldBe(k2, 1e-12 * k1);
        observed.K3.ShouldBe(k3, 1e-12 * k3);
        (observed.Angle * 180 / Math.PI).ShouldBe(degrees, 1e-9);
    }
}

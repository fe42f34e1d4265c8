using CsCheck;
using InfusionSim.Numerics.Lattice;

namespace InfusionSim.Numerics.Tests.Lattice;

public class SellingStencilTests
{
    private static readonly Gen<PlaneTensor> AnyTensor = Gen.Select(
        Gen.Double[-14, -7], Gen.Double[0, 2], Gen.Double[-Math.PI, Math.PI],
        (size, ratio, angle) => PlaneTensor.Of(Math.Pow(10, size + ratio), Math.Pow(10, size), angle));

    [Fact]
    public void Of_AnyTensorToHundredToOne_HasNoWeightBelowZero() =>
        AnyTensor.Sample(tensor => SellingStencil.Of(tensor).Arms.All(arm => arm.Weight > 0), iter: 20_000);

    [Fact]
    public void Of_AnyTensorToHundredToOne_AddsUpToTheTensor() => AnyTensor.Sample(
        tensor =>
        {
            IReadOnlyList<LatticeArm> arms = SellingStencil.Of(tensor).Arms;
            // Tolerance 1e-12 of the trace: rounding in the products of tensor and directions.
            arms.Sum(arm => arm.Weight * arm.Right * arm.Right).ShouldBe(tensor.Xx, 1e-12 * tensor.Trace);
            arms.Sum(arm => arm.Weight * arm.Up * arm.Up).ShouldBe(tensor.Yy, 1e-12 * tensor.Trace);
            arms.Sum(arm => arm.Weight * arm.Right * arm.Up).ShouldBe(tensor.Xy, 1e-12 * tensor.Trace);
        },
        iter: 20_000);

    [Fact]
    public void Of_AnyTensorToHundredToOne_LeadsUpOrRightAtMostThreeWaysWithoutCommonFactor() => AnyTensor.Sample(
        tensor =>
        {
            SellingStencil stencil = SellingStencil.Of(tensor);
            return stencil.Arms.Count is 2 or 3 && stencil.Reach <= 10
                && stencil.Arms.All(arm => (arm.Up > 0 || (arm.Up == 0 && arm.Right > 0)) && Divisor(Math.Abs(arm.Right), arm.Up) == 1);
        },
        iter: 20_000);

    [Theory]
    [InlineData(1, 1)]
    [InlineData(1, 100)]
    [InlineData(37, 2)]
    public void Of_TensorAlongTheAxes_IsTheFivePointStencil(double alongX, double alongY) =>
        SellingStencil.Of(new(alongX, alongY, 0)).Arms.ShouldBe([new(1, 0, alongX), new(0, 1, alongY)], ignoreOrder: true);

    [Fact]
    public void Of_RatioBelowThreePlusRootEight_StaysWithinTheNextCells()
    {
        for (double degrees = 0; degrees < 180; degrees += 0.5)
        {
            SellingStencil.Of(PlaneTensor.Of(5.8, 1, degrees * Math.PI / 180)).Reach.ShouldBe(1);
        }

        Enumerable.Range(0, 180).Max(degrees => SellingStencil.Of(PlaneTensor.Of(6.5, 1, degrees * Math.PI / 180)).Reach).ShouldBe(2);
    }

    [Fact]
    public void Of_TensorOfZero_HasNoWays() => SellingStencil.Of(default).Arms.ShouldBeEmpty();

    [Theory]
    [InlineData(1, 1, 1)]
    [InlineData(1, -1, 0)]
    [InlineData(0, 1, 0.5)]
    [InlineData(double.NaN, 1, 0)]
    public void Of_TensorThatDoesNotConductAllRound_IsRefused(double xx, double yy, double xy) =>
        Should.Throw<ArgumentOutOfRangeException>(() => SellingStencil.Of(new(xx, yy, xy)));

    private static int Divisor(int a, int b) => b == 0 ? a : Divisor(b, a % b);
}

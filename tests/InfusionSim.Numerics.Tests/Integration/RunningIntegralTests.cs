using InfusionSim.Numerics.Integration;

namespace InfusionSim.Numerics.Tests.Integration;

public class RunningIntegralTests
{
    [Theory]
    [InlineData(0.5)]
    [InlineData(3.0)]
    [InlineData(12.0)]
    public void At_Exponential_IsItsClosedForm(double x)
    {
        RunningIntegral integral = new(static t => Math.Exp(-t), [0, 50]);
        integral.At(x).ShouldBe(1 - Math.Exp(-x), 1e-13);
        integral.Where(1 - Math.Exp(-x)).ShouldBe(x, Math.Max(1e-13, 1e-13 * Math.Exp(x)));
    }

    [Fact]
    public void At_FunctionWithAKinkAtABreak_IsExactOnBothSides()
    {
        RunningIntegral integral = new(static t => t < 2 ? 1 : 5, [0, 2, 4]);
        integral.At(1).ShouldBe(1, 1e-14);
        integral.At(3).ShouldBe(7, 1e-13);
        integral.Where(9.5).ShouldBe(3.5, 1e-13);
        integral.Whole.ShouldBe(12, 1e-13);
    }

    [Fact]
    public void At_RootThatEndsAtZero_IsFoundToOneInTenBillion()
    {
        RunningIntegral integral = new(static t => Math.Sqrt(Math.Max(0, 1 - t)), [0, 1]);
        integral.Whole.ShouldBe(2.0 / 3, 1e-10);
        integral.At(0.9).ShouldBe(2.0 / 3 * (1 - Math.Pow(0.1, 1.5)), 1e-12);
    }

    [Fact]
    public void Where_BeyondTheTable_IsNever()
    {
        RunningIntegral integral = new(static _ => 2, [0, 10]);
        integral.Where(20.001).ShouldBe(double.PositiveInfinity);
        integral.Where(20).ShouldBe(10);
        integral.Where(0).ShouldBe(0);
        integral.Where(double.NaN).ShouldBe(double.NaN);
        integral.At(11).ShouldBe(20);
    }
}

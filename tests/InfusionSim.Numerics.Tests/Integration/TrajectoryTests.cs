using InfusionSim.Numerics.Integration;

namespace InfusionSim.Numerics.Tests.Integration;

public class TrajectoryTests
{
    private static readonly Slope Swing = static (_, state, slope) => (slope[0], slope[1]) = (state[1], -state[0]);

    [Theory]
    [InlineData(1.0)]
    [InlineData(7.7)]
    [InlineData(19.99)]
    public void At_Swing_IsSineAndCosine(double time)
    {
        double[] state = Trajectory.Follow(Swing, [0, 1], [0, 20], 1e-12).At(time);
        state[0].ShouldBe(Math.Sin(time), 1e-9);
        state[1].ShouldBe(Math.Cos(time), 1e-9);
    }

    // Order 5: half the step leaves 2⁻⁵ of the error, as long as that lies far above round-off.
    [Fact]
    public void Step_HalfAsLong_LeavesOneThirtySecondOfTheError()
    {
        double coarse = ErrorWith(20), fine = ErrorWith(40);
        Math.Log2(coarse / fine).ShouldBe(5, 0.3);

        static double ErrorWith(int steps)
        {
            DormandPrince method = new(Swing, 2);
            double[] state = [0, 1], after = new double[2];
            for (int k = 0; k < steps; k++)
            {
                method.Step(0, state, 3.0 / steps, after, []);
                after.CopyTo(state, 0);
            }

            return Math.Max(Math.Abs(state[0] - Math.Sin(3)), Math.Abs(state[1] - Math.Cos(3)));
        }
    }

    [Fact]
    public void WhenReaches_Growth_IsItsLogarithm()
    {
        Trajectory growth = Trajectory.Follow(static (_, state, slope) => slope[0] = state[0], [1], [0, 10], 1e-12);
        growth.WhenReaches(0, 100).ShouldBe(Math.Log(100), 1e-10);
        growth.WhenReaches(0, 1e6).ShouldBe(double.PositiveInfinity);
        growth.WhenReaches(0, 0.5).ShouldBe(0);
    }

    // The step that ends at the jump sees beyond it, so it is held by its error and not exact.
    [Fact]
    public void Follow_KinkAtABreak_IsMet() =>
        Trajectory.Follow(static (time, _, slope) => slope[0] = time < 1 ? 1 : 3, [0], [0, 1, 2], 1e-12).At(1.5)[0].ShouldBe(2.5, 1e-10);
}

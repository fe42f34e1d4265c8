using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Tests.Flow;

public class StateGuessTests
{
    // A strip fed at one end, unit cloth: the front stands at X = √(2θ), w = (X − x)²/2 and p = 1 − x/X behind it. Derived.
    private static readonly double[] Places = [0.0, 0.3, 0.6, 0.9, 1.1, 1.3, 1.45];

    [Fact]
    public void Between_StraightFront_IsNearTheClosedForm()
    {
        FillState before = Strip(0.5), after = Strip(0.98);
        double[] full = [.. Places.Select(static x => x * x / 2)];
        FillState middle = Strip(0.74);
        (double[] accumulated, double[] pressure) = StateGuess.Between(before, after, full, 0.74);
        for (int node = 0; node < Places.Length; node++)
        {
            // Cubic where full at both, third order in a span of half the clock; parabola where the front passes, within a twentieth of the largest there.
            accumulated[node].ShouldBe(middle.AccumulatedPressure[node], Places[node] < 1 ? 1e-3 : 0.005, $"x = {Places[node]}");

            // A straight line between two values is off by an eighth of the square of the span times the bend, here at most 0.05.
            pressure[node].ShouldBe(middle.Pressure![node], 0.05, $"x = {Places[node]}");
        }
    }

    [Fact]
    public void Between_NodeThatFillsLater_StaysDry()
    {
        FillState before = Strip(0.5), after = Strip(0.98);
        double[] full = [.. Places.Select(static x => x * x / 2)];
        (double[] accumulated, double[] pressure) = StateGuess.Between(before, after, full, 0.7);
        accumulated[5].ShouldBe(0);
        pressure[5].ShouldBe(0);
        accumulated[6].ShouldBe(0);
        accumulated[4].ShouldBeGreaterThan(0);
    }

    private static FillState Strip(double clock)
    {
        double front = Math.Sqrt(2 * clock);
        return new FillState
        {
            Clock = clock,
            Saturation = [.. Places.Select(x => x < front ? 1.0 : 0)],
            AccumulatedPressure = [.. Places.Select(x => x < front ? (front - x) * (front - x) / 2 : 0)],
            Pressure = [.. Places.Select(x => x < front ? 1 - x / front : 0)],
            FilledFraction = front,
            ResinIn = [],
            ResinOut = [],
            MassBalanceError = 0,
        };
    }
}

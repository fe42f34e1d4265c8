using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Tests.Properties;

/// <summary>Compares two fills that must be one, cell by cell, at the end and on the way.</summary>
public static class SameFill
{
    /// <summary>Ten times the solver's tolerance of 1e-10 on the balance of the wet pores [-].</summary>
    public const double Tolerance = 10 * FillMarcher.ForecastTolerance;

    /// <summary>Checks two maps against each other; the states are those of the solver, nothing in them is interpolated.</summary>
    /// <param name="one">The one fill.</param>
    /// <param name="other">The other fill.</param>
    /// <param name="twinOf">Cell of the other fill that a cell of the one became.</param>
    /// <param name="clock">What the drive clock of the other runs at, over that of the one [-].</param>
    public static void Check(FillMap one, FillMap other, Func<int, int> twinOf, double clock)
    {
        (other.FillClock / one.FillClock).ShouldBe(clock, Tolerance * clock, "clock at the end");
        ShouldAgree(one.Total.SteadyPressure, other.Total.SteadyPressure, 1, 1, twinOf, "pressure when all is wet");
        foreach (double share in new[] { 0.02, 0.13, 0.37, 0.71, 0.96 })
        {
            FillState a = one.StateAt(share * one.FillClock, withPressure: true), b = other.StateAt(share * other.FillClock, withPressure: true);
            ShouldAgree(a.AccumulatedPressure, b.AccumulatedPressure, a.Clock, b.Clock, twinOf, $"accumulated pressure at {share} of the fill");
            b.FilledFraction.ShouldBe(a.FilledFraction, Tolerance, $"share filled at {share} of the fill");
            ShouldHoldTheSame(one.Problem, a, b, twinOf, $"resin in the cells at {share} of the fill");
        }
    }

    private static void ShouldAgree(double[] one, double[] other, double scale, double otherScale, Func<int, int> twinOf, string what)
    {
        double worst = Enumerable.Range(0, one.Length).Max(cell => Math.Abs(other[twinOf(cell)] / otherScale - one[cell] / scale));
        worst.ShouldBeLessThanOrEqualTo(Tolerance, what);
    }

    // The tolerance is one on the sum over the wet pores, so that is what is compared: one small cell alone may take all of it.
    private static void ShouldHoldTheSame(FillProblem problem, FillState one, FillState other, Func<int, int> twinOf, string what)
    {
        double differs = 0, wet = 0;
        for (int cell = 0; cell < one.Saturation.Length; cell++)
        {
            differs += problem.PoreVolume[cell] * Math.Abs(other.Saturation[twinOf(cell)] - one.Saturation[cell]);
            wet += problem.PoreVolume[cell] * one.Saturation[cell];
        }

        (differs / wet).ShouldBeLessThanOrEqualTo(Tolerance, what);
    }
}

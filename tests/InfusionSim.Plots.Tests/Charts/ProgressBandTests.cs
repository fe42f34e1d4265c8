using InfusionSim.Plots.Charts;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Plots.Tests.Charts;

/// <summary>Bands around a straight fill, whose wet share is √(t/T).</summary>
public class ProgressBandTests
{
    private const double FillS = 1800;
    private const double Factor = 1.5;

    [Fact]
    public void Slow_GelBeforeItsEnd_HoldsWhatItHadAtGel()
    {
        var band = Band(endS: FillS, gelS: 2000, Outcome.Fills);

        band.Slow.At(2000).ShouldBe(Math.Sqrt(2000 / (FillS * Factor)), 1e-9);
        band.Slow.At(2600).ShouldBe(band.Slow.At(2000), "the resin is solid by then");
        band.Slow.At(1999).ShouldBeLessThan(band.Slow.At(2000), "it rises up to gel");
        band.Middle.At(2600).ShouldBe(1, 1e-9);
    }

    [Fact]
    public void Fast_MiddleCaseGelsFirst_EndsWhereItsMomentsEnd()
    {
        var band = Band(endS: 1200, gelS: 1200, Outcome.GelsFirst);

        band.FastEndsS.ShouldBe(1200 / Factor, 1e-9);
        band.Fast.At(band.FastEndsS).ShouldBe(Math.Sqrt(1200 / FillS), 1e-9);
        band.Middle.At(1700).ShouldBe(Math.Sqrt(1200 / FillS), 1e-9);
        band.Slow.At(1700).ShouldBe(Math.Sqrt(1200 / (FillS * Factor)), 1e-9);
    }

    [Fact]
    public void Band_GelAfterTheSlowCase_ReachesFullOnEveryCurve()
    {
        var band = Band(endS: FillS, gelS: 3240, Outcome.Fills);

        band.FastEndsS.ShouldBe(double.PositiveInfinity);
        band.Fast.At(FillS / Factor).ShouldBe(1, 1e-9);
        band.Slow.At(FillS * Factor).ShouldBe(1, 1e-9);
        band.Slow.At(FillS * Factor * 0.9).ShouldBeLessThan(1);
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(0.9)]
    [InlineData(1.2)]
    [InlineData(2)]
    public void Curves_GelAnyTime_StopRisingAtGel(double share)
    {
        var gelS = FillS * share;
        var band = Band(Math.Min(FillS, gelS), gelS, share < 1 ? Outcome.GelsFirst : Outcome.Fills);

        foreach (var curve in new[] { band.Fast, band.Middle, band.Slow })
        {
            curve.At(gelS * 3).ShouldBe(curve.At(gelS));
            curve.TimesS.Zip(curve.TimesS.Skip(1)).ShouldAllBe(pair => pair.First < pair.Second);
        }
    }

    private static ProgressBand Band(double endS, double gelS, Outcome outcome)
    {
        var curve = ProgressCurve.From([.. Enumerable.Range(1, 40).Select(i => endS * i / 40)
            .Select(time => new FillMoment { TimeS = time, FilledFraction = Math.Sqrt(time / FillS) })]);
        return ProgressBand.From(curve, new FillForecast { EndTimeS = endS, GelTimeS = gelS, Outcome = outcome }, Factor);
    }
}

using InfusionSim.Protocol.Forecasts;
using InfusionSim.Protocol.Tests.Forecasts;
using InfusionSim.Protocol.Tests.Plans;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;

namespace InfusionSim.Protocol.Tests.Words;

public sealed class BleedWordsTests
{
    [Fact]
    public void Line_LastResinOutInTime_NamesTheMomentItsBandAndTheCatchPot() =>
        Line(after => { }).ShouldBe("until 35 min (two shots in three: 24 to 53 min), then clamp V1: what filled last is out by then, 35 g more. Catch pot 47 to 63 cm³");

    [Fact]
    public void Line_SlowCaseGelsFirst_SaysSo() =>
        Line(static after => after.ClearLastResinOutTimeToS()).ShouldContain("(two shots in three: from 24 min to gelling first)");

    [Fact]
    public void Line_GelComesFirst_ClampsBeforeItAndSaysWhatStays() => Line(static after =>
    {
        after.ClearLastResinOutTimeS();
        after.ClampTimeS = 3240;
        after.LeftWhenClampedFraction = 0.3;
        after.StaysAt = new Point { XMm = 590, YMm = 390 };
    }).ShouldStartWith("until just before it gels at 54 min, then clamp V1: 30 % of what filled last is out by then, the rest stays in (the upper right corner), 35 g more.");

    [Fact]
    public void Line_SomeStandsStill_ClampsBeforeTheRestAndTellsNoBandOfAnotherMoment() => Line(static after =>
    {
        after.ClampTimeS = 1300;
        after.LeftWhenClampedFraction = 0.87;
        after.StaysAt = new Point { XMm = 590, YMm = 200 };
    }).ShouldStartWith("until 22 min, then clamp V1: 87 % of what filled last is out by then, the rest comes slowly or stays in (the right edge, 200 mm up), 35 g more.");

    [Fact]
    public void Line_NothingComesOut_ClampsAtOnce() => Line(static after =>
    {
        after.ClearLastResinOutTimeS();
        after.ClampTimeS = 1800;
        after.LeftWhenClampedFraction = 0;
        after.UntilClampedG = 0;
    }).ShouldStartWith("clamp V1 as soon as it is full, at 30 min: what filled last stands still and does not come out. Catch pot");

    [Fact]
    public void Line_TrappedAir_AdvisesNoWaiting() => Line(static after =>
    {
        after.ClearLastResinOutTimeS();
        (after.AirStays, after.ClampTimeS, after.ResinOutGPerMin) = (true, 1800, 6.6);
    }).ShouldBe("clamp V1 as soon as the rest is full, at 30 min: waiting does not draw the trapped air out, it costs 6.6 g a minute. Catch pot 47 to 63 cm³");

    [Fact]
    public void Line_SeveralVents_AreToldTogether() =>
        Line(static after => after.Vents.Add(new VentAfterFront { Name = "V2" })).ShouldContain("then clamp the vents:");

    [Fact]
    public void Line_ManyLitres_AreLitres() => Line(static after => (after.CatchPotFromCm3, after.CatchPotToCm3) = (1640, 2187)).ShouldEndWith("Catch pot 1.6 to 2.2 l");

    [Fact]
    public void Lines_NoVentPassesResin_HaveNoBleed() => Lines(static forecast => { }).ShouldNotContain(static line => line.Label == "Bleed");

    [Fact]
    public void Lines_CapillaryNumber_StandsBesideThePublishedRangeWithoutAVerdict()
    {
        FillLine line = Lines(static forecast => forecast.Quality = new FillQuality
        {
            FrontSpeedFromMmPerMin = 10.6,
            FrontSpeedToMmPerMin = 151.5,
            CapillaryNumberFromRatio = 0.00121,
            CapillaryNumberToRatio = 0.0175,
            PublishedFromRatio = 1e-3,
            PublishedToRatio = 1e-2,
        }).Single(static line => line.Label == "Front");

        line.Text.ShouldBe("runs at 11 to 150 mm/min; capillary number 0.0012 to 0.018 (best as published: 0.001 to 0.01, doubtful; no verdict)");
    }

    [Fact]
    public void Lines_SpeedAlone_IsNotTold() =>
        Lines(static forecast => forecast.Quality = new FillQuality { FrontSpeedFromMmPerMin = 1, FrontSpeedToMmPerMin = 2 }).ShouldNotContain(static line => line.Label == "Front");

    private static string Line(Action<AfterFront> change) => Lines(forecast =>
    {
        forecast.AfterFront = new AfterFront
        {
            Vents = { new VentAfterFront { Name = "V1" } },
            ClampTimeS = 2115,
            LastResinOutTimeS = 2115,
            LastResinOutTimeFromS = 1410,
            LastResinOutTimeToS = 3172.5,
            LeftWhenClampedFraction = 0.9,
            UntilClampedG = 34.65,
            CatchPotFromCm3 = 47.25,
            CatchPotToCm3 = 63,
        };
        change(forecast.AfterFront);
    }).Single(static line => line.Label == "Bleed").Text;

    private static IReadOnlyList<FillLine> Lines(Action<FillForecast> change)
    {
        FillForecast forecast = ForecastMapping.ToContract(StripForecast.Build(), StripForecast.Inputs);
        change(forecast);
        return FillWords.Lines(StraightStrip.Plan(), forecast);
    }
}

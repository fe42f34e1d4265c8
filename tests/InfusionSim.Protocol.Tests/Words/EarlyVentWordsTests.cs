using InfusionSim.Protocol.Forecasts;
using InfusionSim.Protocol.Tests.Forecasts;
using InfusionSim.Protocol.Tests.Plans;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;

namespace InfusionSim.Protocol.Tests.Words;

public sealed class EarlyVentWordsTests
{
    private static readonly Finding Early = new() { Kind = FindingKind.VentReachedEarly, Line = "V1", TimeS = 1200 };

    [Fact]
    public void Sentence_VentElsewhere_IsToBeMoved() =>
        Sentence(forecast => forecast.LastToFill = new Point { XMm = 300, YMm = 390 }, _ => { })
            .ShouldBe("Resin is in V1 at 20 min with 90 % of the cloth full. Move it to where the cloth fills last.");

    [Fact]
    public void Sentence_LineLongerThanTheLastPlace_IsToBeShortenedToIt() =>
        Sentence(_ => { }, _ => { }).ShouldEndWith("It is longer than the place that fills last: keep only the part round the lower right corner, or shut it when it is wet.");

    [Fact]
    public void Sentence_FittingAtTheLastPlace_IsToBeShut() =>
        Sentence(_ => { }, plan => plan.Vents[0].Path = StraightStrip.PathOf((600, 0))).ShouldEndWith("It lies where the cloth fills last; shut it when it is wet, or throttle it.");

    [Fact]
    public void Sentence_MeshUpToTheVent_BlamesTheMesh() =>
        Sentence(forecast => forecast.Lag = new Lag { LargestMin = 3, MeshToVentMm = 0, StopMeshBeforeVentMm = 100 }, _ => { })
            .ShouldEndWith("It lies where the cloth fills last; the mesh carries the resin there too soon.");

    [Fact]
    public void Sentence_AirShutInByAFeedThatOpens_SaysToOpenItLater()
    {
        var finding = new Finding { Kind = FindingKind.TrapsAir, Amount = 300, AmountUnit = "mm2", At = new Point { XMm = 290, YMm = 200 }, TimeS = 300 };
        FillForecast forecast = Strip();
        forecast.ClampEvents.Add(new ClampEvent { Line = "F2", TimeS = 300, OpenFraction = 1 });
        InfusionPlan plan = StraightStrip.With(change => change.Feeds.Add(new Feed { Name = "F2", Path = StraightStrip.PathOf((300, 0), (300, 400)) }));

        FindingSentences.Of(finding, forecast, plan).ShouldEndWith("cut off from every vent at 5 min. Open F2 only once the front has passed it, or put a vent there.");
        finding.TimeS = 310;
        FindingSentences.Of(finding, forecast, plan).ShouldEndWith("Put a vent there, or move a feed so that the resin gets there last.");
    }

    private static string Sentence(Action<FillForecast> change, Action<InfusionPlan> changePlan)
    {
        FillForecast forecast = Strip();
        forecast.Vents[0].FilledFractionAtArrival = 0.9;
        change(forecast);
        return FindingSentences.Of(Early, forecast, StraightStrip.With(changePlan));
    }

    private static FillForecast Strip() => ForecastMapping.ToContract(StripForecast.Build(), StripForecast.Inputs);
}

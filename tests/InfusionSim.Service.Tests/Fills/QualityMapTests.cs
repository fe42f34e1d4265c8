using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;
using InfusionSim.Service.Fills;

namespace InfusionSim.Service.Tests.Fills;

public sealed class QualityMapTests
{
    [Fact]
    public void PredictFill_QualityMapsAskedFor_BringsANumberForEverySquare()
    {
        PredictFillResponse answer = Answer(new PredictFillRequest
        {
            Plan = StraightStrip.With(static plan => (plan.Resin.SurfaceTensionMnPerM, plan.Resin.ContactAngleDeg) = (35, 30)),
            WithQualityMaps = true,
        });

        FrontMap map = answer.FrontMap;
        int squares = map.Grid.Columns * map.Grid.Rows, half = map.Grid.Columns / 2;
        map.FrontSpeedMmPerMin.Count.ShouldBe(squares);
        map.CapillaryNumberRatio.Count.ShouldBe(squares);
        map.GelMarginFraction.Count.ShouldBe(squares);

        // K Δp/(φ μ x) at x = 302.5 mm: 19.8 mm/min; Ca* = μ v/(γ cos θ); 1 − t/t_gel with t = 1800 s (x/L)².
        map.FrontSpeedMmPerMin[half].ShouldBe(19.83f, 0.1f);
        map.CapillaryNumberRatio[half].ShouldBe(0.2f * 19.83f / 60_000 / 0.030311f, 2e-5f);
        map.GelMarginFraction[half].ShouldBe(1 - 1800f / 3240 * 302.5f * 302.5f / 360_000, 1e-3f);
        answer.Forecast.Quality.PublishedFromRatio.ShouldBe(1e-3);
        answer.Forecast.Quality.CapillaryNumberBasis.ShouldContain("Doubtful");
    }

    [Fact]
    public void PredictFill_FrontMapAlone_BringsNoQualityNumbers()
    {
        PredictFillResponse answer = Answer(new PredictFillRequest { Plan = StraightStrip.Plan(), WithFrontMap = true });

        answer.FrontMap.FrontSpeedMmPerMin.ShouldBeEmpty();
        answer.FrontMap.GelMarginFraction.ShouldBeEmpty();
        answer.Forecast.Quality.HasCapillaryNumberFromRatio.ShouldBeFalse();
    }

    [Fact]
    public void PredictFill_ResinThatGelsFirst_TellsNothingOfTheTimeAfter()
    {
        PredictFillResponse answer = Answer(new PredictFillRequest { Plan = StraightStrip.With(static plan => plan.Resin.GelTimeMin = 20) });

        answer.Forecast.AfterFront.ShouldBeNull();
        answer.Forecast.Quality.SmallestGelMarginFraction.ShouldBe(0, 0.03);
    }

    // The forecaster and the answer as the service puts them together, without the wire between.
    private static PredictFillResponse Answer(PredictFillRequest request)
    {
        PlanCheck check = PlanChecker.Check(request.Plan);
        FillInputs inputs = PlanMapping.ToInputs(check);
        return FillAnswer.Of(
            new PhysicsForecaster().Predict(inputs, null, CancellationToken.None), inputs, check.Warnings, request.WithFrontMap, request.WithQualityMaps);
    }
}

using System.Text.Json;
using InfusionSim.Protocol.Forecasts;
using InfusionSim.Protocol.V1;
using InfusionSim.Service.Tests.Hosting;

namespace InfusionSim.Service.Tests.Fills;

public sealed class PredictFillTests
{
    [Fact]
    public async Task PredictFill_OverGrpcGrpcWebAndJson_AnswersTheSame()
    {
        await using RunningService service = await RunningService.StartAsync();
        var request = new PredictFillRequest { Plan = StraightStrip.Plan() };

        PredictFillResponse grpc = await service.Grpc.PredictFillAsync(request);
        PredictFillResponse web = await service.Web.PredictFillAsync(request);
        using HttpResponseMessage json = await service.Json.PostAsync(
            new Uri("/v1/fills:predict", UriKind.Relative), StraightStrip.Request(StraightStrip.Json));
        string text = await json.Content.ReadAsStringAsync();

        grpc.Forecast.FillTimeS.ShouldBe(1800);
        grpc.FrontMap.ShouldBeNull();
        web.ShouldBe(grpc);
        json.IsSuccessStatusCode.ShouldBeTrue(text);
        PredictFillResponse.Parser.ParseJson(text).ShouldBe(grpc);
        JsonElement forecast = JsonDocument.Parse(text).RootElement.GetProperty("forecast");
        JsonElement own = JsonDocument.Parse(ForecastJson.Write(grpc.Forecast)).RootElement;
        JsonElement.DeepEquals(forecast, own).ShouldBeTrue($"{forecast}\n{own}");
    }

    [Fact]
    public async Task PredictFill_SparsePlan_SaysTheForecastInWordsAndEchoesThePlan()
    {
        await using RunningService service = await RunningService.StartAsync();

        PredictFillResponse answer = await service.Grpc.PredictFillAsync(new PredictFillRequest
        {
            Plan = StraightStrip.With(plan =>
            {
                plan.Feeds[0].Name = "";
                plan.Resolution = null;
            }),
        });

        answer.Answer[0].ShouldBe(new AnswerLine { Label = "FILLS", Text = "full 30 min after opening (two shots in three: 20 to 45 min)" });
        answer.Answer[2].ShouldBe(new AnswerLine { Label = "Last", Text = "the right edge" });
        answer.Plan.Feeds[0].Name.ShouldBe("F1");
        answer.Plan.Resolution.CellMm.ShouldBeInRange(3, 4);
        answer.Forecast.Feeds[0].Name.ShouldBe("F1");
    }

    [Fact]
    public async Task PredictFill_FrontMapAboveFourMebibytes_Arrives()
    {
        await using RunningService service = await RunningService.StartAsync();
        // 1200 × 800 squares: about 4.8 MB of arrival times and states, more than a client takes by default.
        var request = new PredictFillRequest { Plan = StraightStrip.With(plan => plan.Resolution.CellMm = 0.5), WithFrontMap = true };

        PredictFillResponse answer = await service.Grpc.PredictFillAsync(request);

        answer.FrontMap.Squares.Length.ShouldBe(960_000);
        answer.FrontMap.ArrivalTimeS.Count.ShouldBe(960_000);
        answer.CalculateSize().ShouldBeGreaterThan(4 * 1024 * 1024);
    }
}

using Grpc.Core;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Protocol.V1;
using InfusionSim.Service.Tests.Hosting;

namespace InfusionSim.Service.Tests.Fills;

public sealed class WatchFillTests
{
    private static async Task<List<WatchFillResponse>> ReadAsync(AsyncServerStreamingCall<WatchFillResponse> call)
    {
        var all = new List<WatchFillResponse>();
        await foreach (WatchFillResponse message in call.ResponseStream.ReadAllAsync()) all.Add(message);
        return all;
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task WatchFill_SoundPlan_SendsProgressThenMomentsThenTheForecast(bool web)
    {
        await using RunningService service = await RunningService.StartAsync(
            fake => fake.During = (progress, _) => progress?.Report(new ForecastProgress(0.5, "half way")));
        using AsyncServerStreamingCall<WatchFillResponse> call = (web ? service.Web : service.Grpc).WatchFill(
            new WatchFillRequest { Plan = StraightStrip.Plan(), Moments = 4 });

        List<WatchFillResponse> all = await ReadAsync(call);

        all.Select(message => message.Sequence).ShouldBe(Enumerable.Range(1, all.Count).Select(k => (uint)k));
        all[0].Progress.ShouldBe(new Progress { DoneFraction = 0.5, Stage = "half way" });
        all.Where(message => message.Moment is not null).Select(message => message.Moment.TimeS).ShouldBe([450, 900, 1350, 1800]);
        all[^1].Forecast.Forecast.FillTimeS.ShouldBe(1800);
        all[^1].Forecast.FrontMap.Squares.Length.ShouldBe(9600);
        all.Where(message => message.Moment is not null).ShouldAllBe(message => message.Moment.PressureMbarAbs.Count == 0);
    }

    [Fact]
    public async Task WatchFill_AtTimes_ShowsThemInOrderAndNoneBeyondTheEnd()
    {
        await using RunningService service = await RunningService.StartAsync();
        using AsyncServerStreamingCall<WatchFillResponse> call = service.Grpc.WatchFill(
            new WatchFillRequest { Plan = StraightStrip.Plan(), AtTimeS = { 5000, 0, 600 }, WithPressure = true });

        List<WatchFillResponse> all = await ReadAsync(call);

        all.Where(message => message.Moment is not null).Select(message => message.Moment.TimeS).ShouldBe([0, 600, 1800]);
        all.First(message => message.Moment is not null).Moment.PressureMbarAbs[0].ShouldBe(13.25f);
        all[^2].Moment.PressureMbarAbs[0].ShouldBe(513.25f);
        all[^2].Moment.WetShare.ShouldAllBe(share => share == 255);
    }

    [Fact]
    public async Task WatchFill_OverJson_StreamsOneObjectALine()
    {
        await using RunningService service = await RunningService.StartAsync();
        using HttpResponseMessage response = await service.Json.PostAsync(
            new Uri("/v1/fills:watch", UriKind.Relative), StraightStrip.Request(StraightStrip.Json, ", \"moments\": 2"));

        string[] lines = (await response.Content.ReadAsStringAsync()).Split('\n', StringSplitOptions.RemoveEmptyEntries);

        response.IsSuccessStatusCode.ShouldBeTrue();
        WatchFillResponse[] all = [.. lines.Select(WatchFillResponse.Parser.ParseJson)];
        all.Count(message => message.Moment is not null).ShouldBe(2);
        all[^1].Forecast.Forecast.Outcome.ShouldBe(Protocol.V1.Outcome.Fills);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(201)]
    [InlineData(-1)]
    public async Task WatchFill_TooFewOrTooManyMoments_IsRefused(int moments)
    {
        await using RunningService service = await RunningService.StartAsync();
        using AsyncServerStreamingCall<WatchFillResponse> call = service.Grpc.WatchFill(
            new WatchFillRequest { Plan = StraightStrip.Plan(), Moments = moments });

        RpcException refusal = await Should.ThrowAsync<RpcException>(() => ReadAsync(call));

        refusal.StatusCode.ShouldBe(StatusCode.InvalidArgument);
        Protocol.Faults.FaultStatus.Read(refusal).ShouldHaveSingleItem().Path.ShouldBe("moments");
    }
}

using System.Diagnostics;
using Grpc.Core;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.V1;
using InfusionSim.Service.Tests.Hosting;

namespace InfusionSim.Service.Tests.Fills;

public sealed class StoppingTests
{
    private static readonly TimeSpan Soon = TimeSpan.FromSeconds(10);

    // What the physics does between two looks at its token.
    private static void ComputeUntil(CancellationToken cancellation)
    {
        while (true)
        {
            cancellation.ThrowIfCancellationRequested();
            Thread.Sleep(5);
        }
    }

    private static async Task WaitUntilAsync(Func<bool> holds)
    {
        var clock = Stopwatch.StartNew();
        while (!holds() && clock.Elapsed < Soon) await Task.Delay(5);
        holds().ShouldBeTrue();
    }

    [Theory]
    [InlineData("grpc")]
    [InlineData("web")]
    [InlineData("json")]
    [InlineData("watch")]
    public async Task Call_CallerGoesAway_FreesTheCore(string way)
    {
        await using RunningService service = await RunningService.StartAsync(fake => fake.During = (_, stop) => ComputeUntil(stop));
        using var caller = new CancellationTokenSource();
        var request = new PredictFillRequest { Plan = StraightStrip.Plan() };
        Task call = way switch
        {
            "grpc" => service.Grpc.PredictFillAsync(request, cancellationToken: caller.Token).ResponseAsync,
            "web" => service.Web.PredictFillAsync(request, cancellationToken: caller.Token).ResponseAsync,
            "json" => service.Json.PostAsync(new Uri("/v1/fills:predict", UriKind.Relative), StraightStrip.Request(StraightStrip.Json), caller.Token),
            _ => service.Grpc.WatchFill(new WatchFillRequest { Plan = StraightStrip.Plan() }, cancellationToken: caller.Token).ResponseStream.MoveNext(),
        };
        await WaitUntilAsync(() => service.Forecaster.Running == 1);

        await caller.CancelAsync();

        await Should.ThrowAsync<Exception>(() => call);
        await WaitUntilAsync(() => service.Forecaster.Running == 0);
    }

    [Fact]
    public async Task PredictFill_DeadlinePasses_FreesTheCore()
    {
        await using RunningService service = await RunningService.StartAsync(fake => fake.During = (_, stop) => ComputeUntil(stop));

        RpcException refusal = await Should.ThrowAsync<RpcException>(() =>
            service.Grpc.PredictFillAsync(
                new PredictFillRequest { Plan = StraightStrip.Plan() }, deadline: DateTime.UtcNow.AddMilliseconds(600)).ResponseAsync);

        refusal.StatusCode.ShouldBe(StatusCode.DeadlineExceeded);
        await WaitUntilAsync(() => service.Forecaster.Running == 0);
    }

    [Fact]
    public async Task WatchFill_ServiceStops_StreamEndsWithinSeconds()
    {
        RunningService service = await RunningService.StartAsync(fake => fake.During = (_, stop) => ComputeUntil(stop));
        using AsyncServerStreamingCall<WatchFillResponse> call = service.Grpc.WatchFill(new WatchFillRequest { Plan = StraightStrip.Plan() });
        Task read = call.ResponseStream.MoveNext();
        await WaitUntilAsync(() => service.Forecaster.Running == 1);
        var clock = Stopwatch.StartNew();

        await service.Host.StopAsync();

        clock.Elapsed.ShouldBeLessThan(TimeSpan.FromSeconds(5));
        RpcException refusal = await Should.ThrowAsync<RpcException>(() => read);
        refusal.StatusCode.ShouldBe(StatusCode.Unavailable);
        await service.DisposeAsync();
    }

    [Fact]
    public async Task WatchFill_ReaderThatStopsReading_IsGivenUp()
    {
        await using RunningService service = await RunningService.StartAsync(with: options => options with { WriteTimeout = TimeSpan.FromMilliseconds(300) });
        var request = new WatchFillRequest { Plan = StraightStrip.With(plan => plan.Resolution.CellMm = 1), Moments = 200, WithPressure = true };
        using AsyncServerStreamingCall<WatchFillResponse> call = service.Grpc.WatchFill(request);
        (await call.ResponseStream.MoveNext()).ShouldBeTrue();

        // 200 moments of 1.2 MB do not fit any buffer on the way, so the service must wait for the reader, and not for ever.
        await Task.Delay(2000);

        await Should.ThrowAsync<RpcException>(async () =>
        {
            while (await call.ResponseStream.MoveNext())
            {
            }
        });
        await WaitUntilAsync(() => service.Forecaster.Running == 0);
    }

    [Fact]
    public async Task PredictFill_TooManyWaiting_IsRefusedAsBusy()
    {
        await using RunningService service = await RunningService.StartAsync(
            fake => fake.During = (_, stop) => ComputeUntil(stop), options => options with { MostRunning = 1, MostWaiting = 1 });
        using var caller = new CancellationTokenSource();
        var request = new PredictFillRequest { Plan = StraightStrip.Plan() };
        Task[] calls = [.. Enumerable.Range(0, 3).Select(_ => service.Grpc.PredictFillAsync(request, cancellationToken: caller.Token).ResponseAsync)];

        Task first = await Task.WhenAny(calls).WaitAsync(Soon);

        RpcException refusal = await Should.ThrowAsync<RpcException>(() => first);
        refusal.StatusCode.ShouldBe(StatusCode.ResourceExhausted);
        FaultStatus.ReasonOf(refusal).ShouldBe(ErrorReason.Busy);
        await WaitUntilAsync(() => service.Forecaster.Running == 1);
        await caller.CancelAsync();
        await Task.WhenAll(calls.Select(call => Should.ThrowAsync<RpcException>(() => call)));
    }

    [Fact]
    public async Task PredictFill_ComputationFails_KeepsTheExceptionToItself()
    {
        await using RunningService service = await RunningService.StartAsync(
            fake => fake.During = (_, _) => throw new InvalidOperationException("secret path of a file"));

        RpcException refusal = await Should.ThrowAsync<RpcException>(
            () => service.Grpc.PredictFillAsync(new PredictFillRequest { Plan = StraightStrip.Plan() }).ResponseAsync);
        using HttpResponseMessage json = await service.Json.PostAsync(
            new Uri("/v1/fills:predict", UriKind.Relative), StraightStrip.Request(StraightStrip.Json));

        refusal.StatusCode.ShouldBe(StatusCode.Internal);
        refusal.ToString().ShouldNotContain("secret");
        FaultStatus.ReasonOf(refusal).ShouldBe(ErrorReason.SolverStopped);
        (await json.Content.ReadAsStringAsync()).ShouldNotContain("secret");
    }
}

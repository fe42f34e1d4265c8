using Google.Protobuf.Collections;
using Google.Rpc;
using Grpc.Core;
using Grpc.Net.Client;
using InfusionSim.Cli.Commands;
using InfusionSim.Protocol.V1;
using RpcStatus = Google.Rpc.Status;

namespace InfusionSim.Cli.Client;

/// <summary>Asks the service for forecasts, wherever it runs, and turns its refusals into something to read.</summary>
public sealed class FillClient : IAsyncDisposable
{
    private readonly GrpcChannel _channel;
    private readonly FillService.FillServiceClient _service;
    private readonly ResinService.ResinServiceClient _resins;
    private readonly MixService.MixServiceClient _mixing;
    private readonly IAsyncDisposable? _host;

    /// <summary>Makes a client.</summary>
    /// <param name="address">Where the service listens.</param>
    /// <param name="host">What to stop when the client is done; null for a service of somebody else's.</param>
    public FillClient(Uri address, IAsyncDisposable? host = null)
    {
        _channel = GrpcChannel.ForAddress(address, new GrpcChannelOptions { MaxReceiveMessageSize = 256 << 20 });
        _service = new FillService.FillServiceClient(_channel);
        _resins = new ResinService.ResinServiceClient(_channel);
        _mixing = new MixService.MixServiceClient(_channel);
        Address = address;
        _host = host;
    }

    /// <summary>Where the service listens.</summary>
    public Uri Address { get; }

    /// <summary>Predicts a fill.</summary>
    /// <param name="plan">The plan, with what to call it in messages.</param>
    /// <param name="withFrontMap">Whether to bring the arrival of every square.</param>
    /// <param name="withQuality">Whether to bring the quality numbers of every square.</param>
    /// <param name="cancellation">Stops waiting.</param>
    public async Task<PredictFillResponse> PredictAsync(NamedPlan plan, bool withFrontMap, bool withQuality, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(plan);
        try
        {
            PredictFillRequest request = new() { Plan = plan.Plan, WithFrontMap = withFrontMap, WithQualityMaps = withQuality };
            return await _service.PredictFillAsync(request, cancellationToken: cancellation);
        }
        catch (RpcException exception)
        {
            throw Failure(exception, plan.Name);
        }
    }

    /// <summary>Asks how much to mix.</summary>
    /// <param name="plan">The plan, with what to call it in messages.</param>
    /// <param name="cancellation">Stops waiting.</param>
    public async Task<PlanMixResponse> MixAsync(NamedPlan plan, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(plan);
        try
        {
            return await _mixing.PlanMixAsync(new PlanMixRequest { Plan = plan.Plan }, cancellationToken: cancellation);
        }
        catch (RpcException exception)
        {
            throw Failure(exception, plan.Name);
        }
    }

    /// <summary>Watches a fill: progress, moments in order of time, the forecast last.</summary>
    /// <param name="request">What to watch.</param>
    /// <param name="name">What to call the plan in messages.</param>
    /// <param name="told">Told each step as it comes.</param>
    /// <param name="cancellation">Stops watching.</param>
    public async Task<PredictFillResponse> WatchAsync(WatchFillRequest request, string name, Action<WatchFillResponse> told, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(told);
        try
        {
            PredictFillResponse? forecast = null;
            using AsyncServerStreamingCall<WatchFillResponse> call = _service.WatchFill(request, cancellationToken: cancellation);
            await foreach (WatchFillResponse step in call.ResponseStream.ReadAllAsync(cancellation))
            {
                told(step);
                forecast = step.Forecast ?? forecast;
            }

            return forecast ?? throw new CommandException(ExitCodes.NoService, $"the service at {Address} ended without a forecast.");
        }
        catch (RpcException exception)
        {
            throw Failure(exception, name);
        }
    }

    /// <summary>Compares resins on one plan.</summary>
    /// <param name="request">The plan and the cards.</param>
    /// <param name="name">What to call the plan in messages.</param>
    /// <param name="cancellation">Stops waiting.</param>
    public async Task<CompareResinsResponse> CompareResinsAsync(CompareResinsRequest request, string name, CancellationToken cancellation)
    {
        try
        {
            return await _resins.CompareResinsAsync(request, cancellationToken: cancellation);
        }
        catch (RpcException exception)
        {
            throw Failure(exception, name);
        }
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        _channel.Dispose();
        if (_host is not null) await _host.DisposeAsync();
    }

    private Exception Failure(RpcException exception, string name) => exception.StatusCode switch
    {
        StatusCode.InvalidArgument or StatusCode.FailedPrecondition or StatusCode.OutOfRange or StatusCode.ResourceExhausted or StatusCode.Unimplemented
            when Violations(exception) is { Count: > 0 } faults => Refusal(name, faults),
        StatusCode.InvalidArgument => new CommandException(ExitCodes.BadInput, $"{name}: {exception.Status.Detail}"),
        StatusCode.Cancelled => new OperationCanceledException(),
        StatusCode.Unavailable => new CommandException(ExitCodes.NoService, $"no service answers at {Address}. Start one with `infusionsim serve`, or leave --server out to compute here."),
        _ => new CommandException(ExitCodes.NoService, $"the service at {Address} could not answer: {exception.Status.Detail} ({exception.StatusCode})."),
    };

    private static CommandException Refusal(string name, RepeatedField<BadRequest.Types.FieldViolation> faults)
    {
        string count = faults.Count == 1 ? "one thing to put right" : $"{faults.Count} things to put right";
        return new CommandException(ExitCodes.BadInput, [$"{name}: {count}", .. faults.Select(Say)]);
    }

    private static string Say(BadRequest.Types.FieldViolation fault) =>
        fault.Field.Length == 0 || fault.Description.Contains(fault.Field, StringComparison.Ordinal) ? $"  {fault.Description}" : $"  {fault.Field}: {fault.Description}";

    private static RepeatedField<BadRequest.Types.FieldViolation>? Violations(RpcException exception)
    {
        RpcStatus? status = exception.GetRpcStatus();
        return status?.GetDetail<BadRequest>()?.FieldViolations;
    }
}

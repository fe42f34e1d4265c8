using Grpc.Core;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.Requests;
using InfusionSim.Protocol.V1;
using InfusionSim.Service.Hosting;
using Forecast = InfusionSim.Physics.Forecasts.Forecast;

namespace InfusionSim.Service.Fills;

/// <summary>Predicts fills over the wire: checks the request, computes, answers in the contract's words.</summary>
/// <param name="forecaster">Computes the forecasts.</param>
/// <param name="desk">Shares out the cores.</param>
/// <param name="options">How long a slow reader is waited for.</param>
public sealed class FillService(IFillForecaster forecaster, ForecastDesk desk, ServiceOptions options) : Protocol.V1.FillService.FillServiceBase
{
    /// <inheritdoc/>
    public override async Task<PredictFillResponse> PredictFill(PredictFillRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(context);
        PlanCheck check = Sound(RequestChecker.Check(request));
        FillInputs inputs = PlanMapping.ToInputs(check);
        Forecast forecast = await desk.RunAsync(stop => forecaster.Predict(inputs, null, stop), context.CancellationToken);
        return FillAnswer.Of(forecast, inputs, check.Warnings, request.WithFrontMap, request.WithQualityMaps);
    }

    /// <inheritdoc/>
    public override async Task WatchFill(WatchFillRequest request, IServerStreamWriter<WatchFillResponse> responseStream, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(responseStream);
        ArgumentNullException.ThrowIfNull(context);
        PlanCheck check = Sound(RequestChecker.Check(request));
        var watcher = new Watcher(responseStream, context, options.WriteTimeout);
        await new WatchedFill(forecaster, desk, PlanMapping.ToInputs(check), check.Warnings).RunAsync(request, watcher, context.CancellationToken);
    }

    private static PlanCheck Sound(PlanCheck check) => check.IsSound ? check : throw FaultStatus.Of(check.Faults).ToRpcException();
}

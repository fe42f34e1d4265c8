using Grpc.Core;
using InfusionSim.Planning.Mixing;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Forecasts;
using InfusionSim.Protocol.Mixing;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.Requests;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;
using InfusionSim.Service.Fills;
using Forecast = InfusionSim.Physics.Forecasts.Forecast;
using MixSheet = InfusionSim.Planning.Mixing.MixSheet;

namespace InfusionSim.Service.Mixing;

/// <summary>Says how much to mix over the wire: checks the request, computes the fill and the sheet, answers in the contract's words.</summary>
/// <param name="forecaster">Computes the forecasts.</param>
/// <param name="desk">Shares out the cores.</param>
public sealed class MixService(IFillForecaster forecaster, ForecastDesk desk) : Protocol.V1.MixService.MixServiceBase
{
    /// <inheritdoc/>
    public override async Task<PlanMixResponse> PlanMix(PlanMixRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(context);
        PlanCheck check = RequestChecker.Check(request);
        if (!check.IsSound) throw FaultStatus.Of(check.Faults).ToRpcException();
        FillInputs inputs = PlanMapping.ToInputs(check);
        MixInputs mixing = MixInputMapping.ToInputs(inputs);
        (Forecast forecast, MixSheet sheet) = await desk.RunAsync(stop => Compute(inputs, mixing, stop), context.CancellationToken);
        FillForecast fill = ForecastMapping.ToContract(forecast, inputs);
        Protocol.V1.MixSheet answer = MixSheetMapping.ToContract(sheet);
        return new PlanMixResponse
        {
            Sheet = answer,
            Forecast = fill,
            Plan = inputs.Plan,
            Warnings = { check.Warnings },
            Answer = { MixWords.Lines(inputs.Plan, answer, fill).Select(line => new AnswerLine { Label = line.Label, Text = line.Text }) },
        };
    }

    private (Forecast Forecast, MixSheet Sheet) Compute(FillInputs inputs, MixInputs mixing, CancellationToken stop)
    {
        Forecast forecast = forecaster.Predict(inputs, null, stop);
        return (forecast, MixPlanner.Plan(inputs.Panel, forecast, mixing, time => forecaster.StateAt(forecast, inputs, time, false, stop), stop));
    }
}

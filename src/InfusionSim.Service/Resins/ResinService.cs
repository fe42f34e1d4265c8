using Grpc.Core;
using InfusionSim.Planning.Resins;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Forecasts;
using InfusionSim.Protocol.Mixing;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.Requests;
using InfusionSim.Protocol.Resins;
using InfusionSim.Protocol.V1;
using InfusionSim.Service.Fills;

namespace InfusionSim.Service.Resins;

/// <summary>Compares resins over the wire: checks the cards, computes, answers in the contract's words.</summary>
/// <param name="desk">Shares out the cores; a comparison takes one, as a forecast does.</param>
public sealed class ResinService(ForecastDesk desk) : Protocol.V1.ResinService.ResinServiceBase
{
    /// <inheritdoc/>
    public override async Task<CompareResinsResponse> CompareResins(CompareResinsRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(context);
        ResinsCheck check = ResinsChecker.Check(request);
        if (!check.IsSound) throw FaultStatus.Of(check.Faults).ToRpcException();
        FillInputs[] inputs = [.. check.Cards.Select(PlanMapping.ToInputs)];
        IReadOnlyList<ResinOnPanel> resins = await desk.RunAsync(stop => Compare(inputs, stop), context.CancellationToken);
        return ResinComparisonMapping.ToContract(resins, inputs, check.Warnings);
    }

    private static IReadOnlyList<ResinOnPanel> Compare(FillInputs[] inputs, CancellationToken stop) => ResinComparison.Of(
        inputs[0].Panel, [.. inputs.Select(static one => new ResinCandidate(one.Resin, MixInputMapping.ToInputs(one).Wishes, KnownTemperatures.Of(one.Plan)))], inputs[0].Bag, inputs[0].Goals, inputs[0].PermeabilityFactor, cancellation: stop);
}

using Google.Protobuf;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Requests;

/// <summary>Finds every fault of a request: those of its plan and those of the rest.</summary>
public static class RequestChecker
{
    /// <summary>Checks a request.</summary>
    /// <param name="request">The request.</param>
    public static PlanCheck Check(PredictFillRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        return PlanChecker.Check(request.Plan);
    }

    /// <summary>Checks a request.</summary>
    /// <param name="request">The request.</param>
    public static PlanCheck Check(WatchFillRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        return Check(request, []);
    }

    /// <summary>Checks a request.</summary>
    /// <param name="request">The request.</param>
    public static PlanCheck Check(PlanMixRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        return PlanChecker.Check(request.Plan);
    }

    /// <summary>Checks a request that was read from JSON.</summary>
    /// <param name="request">What could be read.</param>
    /// <param name="found">The faults of reading it.</param>
    public static PlanCheck Check(IMessage request, IReadOnlyList<Fault> found)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(found);
        if (PlanChecker.IsUnread(found)) return new PlanCheck(new InfusionPlan(), found, []);
        return request switch
        {
            PredictFillRequest predict => PlanChecker.Check(predict.Plan, found),
            PlanMixRequest mix => PlanChecker.Check(mix.Plan, found),
            WatchFillRequest watch => PlanChecker.Check(watch.Plan, [.. found, .. FaultsOfMoments(watch)]),
            CompareResinsRequest compare => new PlanCheck(compare.Plan ?? new InfusionPlan(), ResinsChecker.Check(compare, found).Faults, []),
            _ => throw new ArgumentException($"{request.Descriptor.FullName} is no request with a plan.", nameof(request)),
        };
    }

    private static IReadOnlyList<Fault> FaultsOfMoments(WatchFillRequest request)
    {
        var faults = new FaultList();
        if (request.HasMoments && request.Moments is < 1 or > RequestLimits.MostMoments)
            faults.Add("moments", $"moments is {Numbers.Count(request.Moments)}; it must lie between 1 and {RequestLimits.MostMoments}.");
        if (request.AtTimeS.Count > RequestLimits.MostMoments)
            faults.Add("atTimeS", $"atTimeS names {Numbers.Count(request.AtTimeS.Count)} moments; at most {RequestLimits.MostMoments} are shown.", ErrorReason.TooLarge);
        else
            NumberCheck.Run(new WatchFillRequest { AtTimeS = { request.AtTimeS } }, faults);
        return faults.ToList();
    }
}

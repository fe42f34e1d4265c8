using Google.Protobuf.WellKnownTypes;
using Google.Rpc;
using Grpc.Core;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Faults;

/// <summary>Faults on the wire: a status with one field violation for each and one reason for all, and back.</summary>
public static class FaultStatus
{
    /// <summary>Domain of the reasons in error_reason.proto.</summary>
    public const string Domain = "infusionsim.v1";

    /// <summary>The status that refuses a request.</summary>
    /// <param name="faults">The faults, at least one.</param>
    public static Google.Rpc.Status Of(IReadOnlyList<Fault> faults)
    {
        ArgumentNullException.ThrowIfNull(faults);
        ArgumentOutOfRangeException.ThrowIfZero(faults.Count);
        var violations = new BadRequest();
        foreach (Fault fault in faults)
        {
            violations.FieldViolations.Add(new BadRequest.Types.FieldViolation
            {
                Field = fault.Path,
                Description = fault.Text,
                Reason = NameOf(fault.Reason),
            });
        }

        string count = faults.Count == 1 ? "" : $" (and {faults.Count - 1} more)";
        return new Google.Rpc.Status
        {
            Code = (int)StatusCode.InvalidArgument,
            Message = faults[0].Text + count,
            Details = { Any.Pack(violations), Any.Pack(Info(LeadingReason(faults))) },
        };
    }

    /// <summary>A status of another kind, with its reason.</summary>
    /// <param name="code">The code.</param>
    /// <param name="message">What the reader should know; never the text of an exception.</param>
    /// <param name="reason">The reason.</param>
    public static Google.Rpc.Status Of(StatusCode code, string message, ErrorReason reason) => new()
    {
        Code = (int)code,
        Message = message,
        Details = { Any.Pack(Info(reason)) },
    };

    /// <summary>The faults that a service answered with, or an empty list when it failed for another reason.</summary>
    /// <param name="exception">What the call threw.</param>
    public static IReadOnlyList<Fault> Read(RpcException exception)
    {
        ArgumentNullException.ThrowIfNull(exception);
        BadRequest? request = exception.GetRpcStatus()?.GetDetail<BadRequest>();
        if (request is null) return [];
        return [.. request.FieldViolations.Select(violation => new Fault(violation.Field, violation.Description, ReasonOf(violation.Reason)))];
    }

    /// <summary>The reason that a service answered with; unspecified when it gave none.</summary>
    /// <param name="exception">What the call threw.</param>
    public static ErrorReason ReasonOf(RpcException exception)
    {
        ArgumentNullException.ThrowIfNull(exception);
        return ReasonOf(exception.GetRpcStatus()?.GetDetail<ErrorInfo>()?.Reason ?? "");
    }

    private static ErrorInfo Info(ErrorReason reason) => new() { Domain = Domain, Reason = NameOf(reason) };

    // The reason of the whole is that of the fault to put right first: text before keys before sizes before numbers.
    private static ErrorReason LeadingReason(IReadOnlyList<Fault> faults)
    {
        ReadOnlySpan<ErrorReason> order = [ErrorReason.NotJson, ErrorReason.UnknownKey, ErrorReason.TooLarge, ErrorReason.PlanInvalid];
        foreach (ErrorReason reason in order)
            if (faults.Any(fault => fault.Reason == reason)) return reason;
        return faults[0].Reason;
    }

    private static string NameOf(ErrorReason reason) => ErrorReasonReflection.Descriptor.EnumTypes[0].FindValueByNumber((int)reason).Name;

    private static ErrorReason ReasonOf(string name) =>
        (ErrorReason)(ErrorReasonReflection.Descriptor.EnumTypes[0].FindValueByName(name)?.Number ?? 0);
}

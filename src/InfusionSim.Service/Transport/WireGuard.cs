using Grpc.Core;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.V1;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.Extensions.Primitives;

namespace InfusionSim.Service.Transport;

/// <summary>Tells a caller whose bytes are no message that they are none.</summary>
/// <remarks>
/// The transport decodes a message before any handler runs and reports broken bytes as an unknown failure. Every
/// failure of a handler has a code of its own (<see cref="FailureInterceptor"/>), so an unknown one is always that.
/// </remarks>
internal sealed class WireGuard(RequestDelegate next)
{
    private const string StatusName = "grpc-status", MessageName = "grpc-message", DetailsName = "grpc-status-details-bin";

    /// <summary>Passes the request on and looks at how it ended.</summary>
    public async Task InvokeAsync(HttpContext context)
    {
        await next(context);
        IHeaderDictionary? trailers = context.Features.Get<IHttpResponseTrailersFeature>()?.Trailers;
        IHeaderDictionary? ending = trailers is { IsReadOnly: false } && trailers.ContainsKey(StatusName) ? trailers
            : !context.Response.HasStarted && context.Response.Headers.ContainsKey(StatusName) ? context.Response.Headers
            : null;
        if (ending is null || ending[StatusName] != new StringValues(((int)StatusCode.Unknown).ToString(System.Globalization.CultureInfo.InvariantCulture))) return;
        Google.Rpc.Status status = FaultStatus.Of(StatusCode.InvalidArgument, "The bytes of the request are no message of this contract.", ErrorReason.NotAMessage);
        ending[StatusName] = status.Code.ToString(System.Globalization.CultureInfo.InvariantCulture);
        ending[MessageName] = status.Message;
        ending[DetailsName] = Convert.ToBase64String(Google.Protobuf.MessageExtensions.ToByteArray(status));
    }
}

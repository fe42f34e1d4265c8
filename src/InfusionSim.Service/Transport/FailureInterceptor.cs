using Grpc.Core;
using Grpc.Core.Interceptors;
using InfusionSim.Physics.Gravity;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Service.Transport;

/// <summary>Gives every failure a code and a reason; what an exception says stays in the log.</summary>
internal sealed partial class FailureInterceptor(IHostApplicationLifetime lifetime, ILogger<FailureInterceptor> log) : Interceptor
{
    /// <inheritdoc/>
    public override async Task<TResponse> UnaryServerHandler<TRequest, TResponse>(
        TRequest request, ServerCallContext context, UnaryServerMethod<TRequest, TResponse> continuation)
    {
        try
        {
            return await continuation(request, context);
        }
        catch (Exception exception) when (exception is not RpcException)
        {
            throw Translate(exception, context);
        }
    }

    /// <inheritdoc/>
    public override async Task ServerStreamingServerHandler<TRequest, TResponse>(
        TRequest request, IServerStreamWriter<TResponse> responseStream, ServerCallContext context, ServerStreamingServerMethod<TRequest, TResponse> continuation)
    {
        try
        {
            await continuation(request, responseStream, context);
        }
        catch (Exception exception) when (exception is not RpcException)
        {
            throw Translate(exception, context);
        }
    }

    private RpcException Translate(Exception exception, ServerCallContext context)
    {
        Google.Rpc.Status status;
        if (lifetime.ApplicationStopping.IsCancellationRequested)
        {
            status = FaultStatus.Of(StatusCode.Unavailable, "The service is stopping.", ErrorReason.Stopping);
        }
        else if (context.CancellationToken.IsCancellationRequested)
        {
            status = context.Deadline <= DateTime.UtcNow
                ? FaultStatus.Of(StatusCode.DeadlineExceeded, "The caller's deadline passed.", ErrorReason.Cancelled)
                : FaultStatus.Of(StatusCode.Cancelled, "The caller went away.", ErrorReason.Cancelled);
        }
        else if (exception is ResinRunsBackException back)
        {
            status = FaultStatus.Of([new Fault(back.Feed is null ? "slope" : "bag.steps", back.Message, ErrorReason.NotComputedYet)]);
        }
        else
        {
            LogFailure(log, context.Method, exception);
            status = FaultStatus.Of(StatusCode.Internal, "The computation failed. This is a fault of the program, not of the plan; the service's log names it.", ErrorReason.SolverStopped);
        }

        return status.ToRpcException();
    }

    [LoggerMessage(EventId = 1, Level = LogLevel.Error, Message = "{Method} failed.")]
    private static partial void LogFailure(ILogger log, string method, Exception exception);
}

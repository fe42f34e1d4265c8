using Grpc.Core;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Service.Fills;

/// <summary>One caller that watches a fill: numbers its messages and gives it up when it does not read.</summary>
/// <param name="stream">Where the messages go.</param>
/// <param name="context">The call.</param>
/// <param name="writeTimeout">How long a message may wait to be taken.</param>
internal sealed class Watcher(IServerStreamWriter<WatchFillResponse> stream, ServerCallContext context, TimeSpan writeTimeout)
{
    private uint _sequence;

    /// <summary>Sends a message.</summary>
    /// <exception cref="RpcException">When the caller does not read.</exception>
    public async Task SendAsync(WatchFillResponse message, CancellationToken cancellation)
    {
        message.Sequence = ++_sequence;
        try
        {
            await stream.WriteAsync(message, CancellationToken.None).WaitAsync(writeTimeout, cancellation);
        }
        catch (TimeoutException)
        {
            // The message still waits in the connection; only cutting that frees the memory.
            context.GetHttpContext().Abort();
            throw FaultStatus.Of(StatusCode.Aborted, "The stream was not read.", ErrorReason.ReaderTooSlow).ToRpcException();
        }
    }
}

using InfusionSim.Protocol.Requests;
using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace InfusionSim.Service.Hosting;

/// <summary>What one caller may ask of the server before any of its bytes are looked at.</summary>
internal static class ServerLimits
{
    /// <summary>How long open streams are waited for when the service stops.</summary>
    public static readonly TimeSpan ShutdownTimeout = TimeSpan.FromSeconds(3);

    // Room to read a request that is too long to its end and say so; beyond it the connection is cut.
    private const int LongestRead = 4 * RequestLimits.MostRequestBytes;

    /// <summary>Sets the limits.</summary>
    public static void Apply(KestrelServerLimits limits)
    {
        limits.MaxRequestBodySize = LongestRead;
        limits.MaxConcurrentConnections = 256;
        limits.RequestHeadersTimeout = TimeSpan.FromSeconds(10);
        limits.KeepAliveTimeout = TimeSpan.FromMinutes(2);
    }
}

using InfusionSim.Cli.Commands;
using InfusionSim.Service.Hosting;

namespace InfusionSim.Cli.Hosting;

/// <summary>The service inside this process, on loopback ports of its own.</summary>
public sealed class EmbeddedService : IAsyncDisposable
{
    /// <summary>Port for gRPC where none is given.</summary>
    public const int UsualGrpcPort = ServiceOptions.UsualGrpcPort;

    /// <summary>Port for JSON and gRPC-Web where none is given.</summary>
    public const int UsualHttpPort = ServiceOptions.UsualHttpPort;

    private readonly ServiceHost _host;

    private EmbeddedService(ServiceHost host) => _host = host;

    /// <summary>Where gRPC is served.</summary>
    public Uri Address => _host.GrpcAddress;

    /// <summary>Where JSON and gRPC-Web are served.</summary>
    public Uri HttpAddress => _host.HttpAddress;

    /// <summary>Starts the service for one command, on free ports.</summary>
    /// <param name="cancellation">Gives up the start.</param>
    public static Task<EmbeddedService> StartAsync(CancellationToken cancellation) => StartAsync(ServiceOptions.Embedded, cancellation);

    /// <summary>Starts the service for this program and others.</summary>
    /// <param name="grpcPort">Port for gRPC; 0 takes a free one.</param>
    /// <param name="httpPort">Port for JSON and gRPC-Web; 0 takes a free one.</param>
    /// <param name="cancellation">Gives up the start.</param>
    public static Task<EmbeddedService> StartAsync(int grpcPort, int httpPort, CancellationToken cancellation) =>
        StartAsync(ServiceOptions.Embedded with { GrpcPort = grpcPort, HttpPort = httpPort }, cancellation);

    /// <summary>Waits until the service is told to stop.</summary>
    /// <param name="cancellation">Tells it to.</param>
    public Task WaitAsync(CancellationToken cancellation) => _host.WaitForStopAsync(cancellation);

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => _host.DisposeAsync();

    private static async Task<EmbeddedService> StartAsync(ServiceOptions options, CancellationToken cancellation)
    {
        try
        {
            return new EmbeddedService(await ServiceHost.StartAsync(options, cancellation: cancellation));
        }
        catch (IOException exception)
        {
            throw new CommandException(ExitCodes.NoService, $"the service cannot start: {exception.Message} Take another port, or 0 for any that is free.");
        }
    }
}

using System.Net;
using InfusionSim.Service.Fills;
using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace InfusionSim.Service.Hosting;

/// <summary>The running service: gRPC on one loopback port, gRPC-Web and JSON on another.</summary>
/// <remarks>Two ports, because without a certificate a connection cannot negotiate between HTTP/2 and HTTP/1.1. It reads no settings file, so the folder it is started from changes nothing.</remarks>
public sealed class ServiceHost : IAsyncDisposable
{
    private readonly WebApplication _application;

    private ServiceHost(WebApplication application, ListenOptions grpc, ListenOptions http)
    {
        _application = application;
        GrpcAddress = AddressOf(grpc);
        HttpAddress = AddressOf(http);
    }

    /// <summary>Where gRPC is served.</summary>
    public Uri GrpcAddress { get; }

    /// <summary>Where gRPC-Web and JSON are served.</summary>
    public Uri HttpAddress { get; }

    /// <summary>Starts a service.</summary>
    /// <param name="options">How.</param>
    /// <param name="forecaster">Computes the forecasts; null for the physics.</param>
    /// <param name="cancellation">Gives up the start.</param>
    /// <exception cref="IOException">When a port is taken.</exception>
    public static async Task<ServiceHost> StartAsync(ServiceOptions options, IFillForecaster? forecaster = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(options);
        WebApplicationBuilder builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions
        {
            ApplicationName = "InfusionSim.Service",
            ContentRootPath = AppContext.BaseDirectory,
        });
        ListenOptions? grpc = null, http = null;
        builder.WebHost.UseKestrelCore().ConfigureKestrel(kestrel =>
        {
            ServerLimits.Apply(kestrel.Limits);
            kestrel.AddServerHeader = false;
            kestrel.Listen(IPAddress.Loopback, options.GrpcPort, listen => (grpc = listen).Protocols = HttpProtocols.Http2);
            kestrel.Listen(IPAddress.Loopback, options.HttpPort, listen => (http = listen).Protocols = HttpProtocols.Http1);
        });
        ServiceParts.Register(builder.Services, options, forecaster ?? new PhysicsForecaster());
        WebApplication application = builder.Build();
        ServicePipeline.Lay(application);
        try
        {
            await application.StartAsync(cancellation);
        }
        catch
        {
            await application.DisposeAsync();
            throw;
        }

        return new ServiceHost(application, grpc!, http!);
    }

    /// <summary>Waits until the service is told to stop by a signal or by <see cref="StopAsync"/>.</summary>
    /// <param name="cancellation">Stops it as well.</param>
    public Task WaitForStopAsync(CancellationToken cancellation = default) => _application.WaitForShutdownAsync(cancellation);

    /// <summary>Stops the service: open streams end within seconds.</summary>
    /// <param name="cancellation">Stops waiting for them.</param>
    public Task StopAsync(CancellationToken cancellation = default) => _application.StopAsync(cancellation);

    /// <summary>Stops the service and frees its ports.</summary>
    public async ValueTask DisposeAsync()
    {
        await _application.StopAsync();
        await _application.DisposeAsync();
    }

    private static Uri AddressOf(ListenOptions listen) => new($"http://127.0.0.1:{listen.IPEndPoint!.Port}");
}

using System.Net;
using Grpc.Net.Client;
using Grpc.Net.Client.Web;
using InfusionSim.Protocol.Requests;
using InfusionSim.Protocol.V1;
using InfusionSim.Service.Hosting;
using InfusionSim.Service.Tests.Fills;

namespace InfusionSim.Service.Tests.Hosting;

/// <summary>A whole service on free loopback ports, with the three ways to it.</summary>
internal sealed class RunningService : IAsyncDisposable
{
    private readonly GrpcChannel _grpc, _web;

    private RunningService(ServiceHost host, StripForecaster forecaster)
    {
        Host = host;
        Forecaster = forecaster;
        _grpc = GrpcChannel.ForAddress(host.GrpcAddress, Options());
        GrpcChannelOptions web = Options();
        web.HttpVersion = HttpVersion.Version11;
        web.HttpHandler = new GrpcWebHandler(GrpcWebMode.GrpcWeb, new HttpClientHandler());
        _web = GrpcChannel.ForAddress(host.HttpAddress, web);
        Json = new HttpClient { BaseAddress = host.HttpAddress };
    }

    public ServiceHost Host { get; }

    public StripForecaster Forecaster { get; }

    public FillService.FillServiceClient Grpc => new(_grpc);

    public FillService.FillServiceClient Web => new(_web);

    public GrpcChannel Channel => _grpc;

    public HttpClient Json { get; }

    public static async Task<RunningService> StartAsync(Action<StripForecaster>? set = null, Func<ServiceOptions, ServiceOptions>? with = null)
    {
        var forecaster = new StripForecaster();
        set?.Invoke(forecaster);
        ServiceOptions options = with?.Invoke(ServiceOptions.Embedded) ?? ServiceOptions.Embedded;
        return new RunningService(await ServiceHost.StartAsync(options, forecaster), forecaster);
    }

    public async ValueTask DisposeAsync()
    {
        _grpc.Dispose();
        _web.Dispose();
        Json.Dispose();
        await Host.DisposeAsync();
    }

    private static GrpcChannelOptions Options() => new() { MaxReceiveMessageSize = RequestLimits.MostAnswerBytes };
}

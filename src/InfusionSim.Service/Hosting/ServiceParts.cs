using Google.Protobuf.Reflection;
using Google.Rpc;
using InfusionSim.Protocol.Requests;
using InfusionSim.Service.Fills;
using InfusionSim.Service.Transport;
using Microsoft.AspNetCore.HostFiltering;
using Microsoft.Extensions.Diagnostics.HealthChecks;
using Microsoft.Extensions.Logging.Console;

namespace InfusionSim.Service.Hosting;

/// <summary>What the service is made of.</summary>
internal static class ServiceParts
{
    /// <summary>Registers the parts.</summary>
    public static void Register(IServiceCollection services, ServiceOptions options, IFillForecaster forecaster)
    {
        services.AddSingleton(options);
        services.AddSingleton(forecaster);
        services.AddSingleton<ForecastDesk>();
        services.AddGrpc(grpc =>
        {
            grpc.MaxReceiveMessageSize = RequestLimits.MostRequestBytes;
            grpc.MaxSendMessageSize = RequestLimits.MostAnswerBytes;
            grpc.EnableDetailedErrors = false;
            grpc.Interceptors.Add<FailureInterceptor>();
        }).AddJsonTranscoding(json => json.TypeRegistry = ErrorDetails);
        services.AddGrpcReflection();
        services.AddGrpcHealthChecks().AddCheck("fill", () => HealthCheckResult.Healthy());
        services.Configure<HostFilteringOptions>(hosts => hosts.AllowedHosts = [.. LoopbackNames.Hosts]);
        services.Configure<HostOptions>(host => host.ShutdownTimeout = ServerLimits.ShutdownTimeout);
        services.Configure<ConsoleLifetimeOptions>(lifetime => lifetime.SuppressStatusMessages = true);
        if (options.IsEmbedded) services.AddSingleton<IHostLifetime, QuietLifetime>();
        services.AddLogging(log => log
            .SetMinimumLevel(options.LogLevel)
            .AddSimpleConsole(console => console.SingleLine = true)
            .Services.Configure<ConsoleLoggerOptions>(console => console.LogToStandardErrorThreshold = LogLevel.Trace));
    }

    /// <summary>The details of an error that JSON can show; without them an error with details would come out as an empty failure.</summary>
    public static TypeRegistry ErrorDetails { get; } = TypeRegistry.FromMessages(BadRequest.Descriptor, ErrorInfo.Descriptor);
}

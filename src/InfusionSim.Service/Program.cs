using InfusionSim.Service.Hosting;

namespace InfusionSim.Service;

/// <summary>Starts the service: from here the way leads to the host, the fill service, the mapping of the plan, the forecaster and the solver.</summary>
public static class Program
{
    /// <summary>Runs the service until it is told to stop.</summary>
    /// <param name="arguments">--grpc-port N and --http-port N; both left out for the usual ports.</param>
    public static async Task<int> Main(string[] arguments)
    {
        if (!ServiceOptions.TryParse(arguments, out ServiceOptions options, out string fault))
        {
            await Console.Error.WriteLineAsync(fault);
            return 2;
        }

        await using ServiceHost host = await ServiceHost.StartAsync(options);
        await Console.Error.WriteLineAsync($"gRPC {host.GrpcAddress} · gRPC-Web and JSON {host.HttpAddress} · Ctrl-C stops");
        await host.WaitForStopAsync();
        return 0;
    }
}

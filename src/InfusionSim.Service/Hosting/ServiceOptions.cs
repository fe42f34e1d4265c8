using System.Globalization;

namespace InfusionSim.Service.Hosting;

/// <summary>How the service is started.</summary>
public sealed record ServiceOptions
{
    /// <summary>Port for gRPC where none is given.</summary>
    public const int UsualGrpcPort = 7411;

    /// <summary>Port for gRPC-Web and JSON where none is given.</summary>
    public const int UsualHttpPort = 7410;

    /// <summary>Loopback port for gRPC; 0 takes a free one.</summary>
    public int GrpcPort { get; init; } = UsualGrpcPort;

    /// <summary>Loopback port for gRPC-Web and JSON; 0 takes a free one.</summary>
    public int HttpPort { get; init; } = UsualHttpPort;

    /// <summary>Forecasts that are computed at the same time [-]; one a core.</summary>
    public int MostRunning { get; init; } = Environment.ProcessorCount;

    /// <summary>Forecasts that may wait for a core [-]; the next one is refused as busy.</summary>
    public int MostWaiting { get; init; } = 32;

    /// <summary>How long the service waits for a caller that does not read its stream.</summary>
    public TimeSpan WriteTimeout { get; init; } = TimeSpan.FromSeconds(15);

    /// <summary>Whether another program hosts the service: it then leaves signals and the terminal to that program.</summary>
    public bool IsEmbedded { get; init; }

    /// <summary>From which level on the log is written, to standard error.</summary>
    public LogLevel LogLevel { get; init; } = LogLevel.Warning;

    /// <summary>Options of a service inside another program: free ports, no signals, a silent log.</summary>
    public static ServiceOptions Embedded { get; } = new() { GrpcPort = 0, HttpPort = 0, IsEmbedded = true, LogLevel = LogLevel.Critical };

    /// <summary>Reads the arguments of the program.</summary>
    /// <param name="arguments">The arguments.</param>
    /// <param name="options">What they ask for.</param>
    /// <param name="fault">What is wrong with them; empty when nothing is.</param>
    public static bool TryParse(IReadOnlyList<string> arguments, out ServiceOptions options, out string fault)
    {
        ArgumentNullException.ThrowIfNull(arguments);
        (options, fault) = (new ServiceOptions(), "");
        for (int k = 0; k < arguments.Count; k += 2)
        {
            string value = k + 1 < arguments.Count ? arguments[k + 1] : "";
            bool isPort = int.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out int port) && port <= 65535;
            if (arguments[k] is not ("--grpc-port" or "--http-port")) fault = $"'{arguments[k]}' is not known; known are --grpc-port N and --http-port N.";
            else if (!isPort) fault = $"{arguments[k]} is '{value}'; it must be a port from 0 to 65535 (0 takes a free one).";
            else options = arguments[k] == "--grpc-port" ? options with { GrpcPort = port } : options with { HttpPort = port };
            if (fault.Length > 0) return false;
        }

        return true;
    }
}

using InfusionSim.Cli.Client;
using InfusionSim.Cli.Commands;

namespace InfusionSim.Cli.Hosting;

/// <summary>Finds the service: the one named on the command line, or the very same one started inside this process.</summary>
public static class ServiceLocation
{
    /// <summary>Makes a client of the service.</summary>
    /// <param name="server">Address as typed; null to compute here.</param>
    /// <param name="cancellation">Stops the start.</param>
    /// <exception cref="CommandException">When the address cannot be used or the service cannot be started.</exception>
    public static async Task<FillClient> OpenAsync(string? server, CancellationToken cancellation)
    {
        if (server is not null) return new FillClient(AddressOf(server));
        EmbeddedService host = await EmbeddedService.StartAsync(cancellation);
        return new FillClient(host.Address, host);
    }

    private static Uri AddressOf(string server)
    {
        string whole = server.Contains("://", StringComparison.Ordinal) ? server : "http://" + server;
        bool isUsable = Uri.TryCreate(whole, UriKind.Absolute, out Uri? address) && address.Scheme is "http" or "https" && address!.Host.Length > 0;
        return isUsable ? address! : throw new CommandException(ExitCodes.BadInput, $"--server {server}: write an address like http://127.0.0.1:7020");
    }
}

using System.CommandLine;
using InfusionSim.Cli.Hosting;
using InfusionSim.Cli.Terminal;

namespace InfusionSim.Cli.Commands;

/// <summary>`serve`: runs the service on this machine until it is stopped.</summary>
public static class ServeCommand
{
    /// <summary>Makes the command.</summary>
    /// <param name="screen">Where to write.</param>
    public static Command Create(Screen screen)
    {
        Option<int> grpcPort = Port("--grpc-port", "Port for gRPC on this machine; 0 takes a free one.", EmbeddedService.UsualGrpcPort);
        Option<int> httpPort = Port("--http-port", "Port for JSON and gRPC-Web on this machine; 0 takes a free one.", EmbeddedService.UsualHttpPort);
        ExampleCommand command = new("serve", "Run the service on this machine until Ctrl-C, for this program and others.", "infusionsim serve")
        {
            Footnote = "Only this machine can reach it: it listens on 127.0.0.1.",
        };
        command.Add(grpcPort);
        command.Add(httpPort);
        command.SetAction(async (typed, cancellation) =>
        {
            await using EmbeddedService host = await EmbeddedService.StartAsync(typed.GetValue(grpcPort), typed.GetValue(httpPort), cancellation);
            screen.Output.WriteLine($"gRPC     {host.Address}");
            screen.Output.WriteLine($"JSON     {host.HttpAddress}");
            screen.Output.Flush();
            screen.Tell($"Ready; Ctrl-C ends it. Try: infusionsim fill plate.json --server {host.Address}");
            await host.WaitAsync(cancellation);
            return ExitCodes.Done;
        });
        return command;
    }

    private static Option<int> Port(string name, string description, int usual)
    {
        Option<int> port = new(name) { Description = description, DefaultValueFactory = _ => usual, HelpName = "PORT" };
        port.Validators.Add(result =>
        {
            if (result.Tokens.Count == 1 && !(int.TryParse(result.Tokens[0].Value, out int number) && number is >= 0 and <= 65535))
                result.AddError($"{name} must be a whole number from 0 to 65535.");
        });
        return port;
    }
}

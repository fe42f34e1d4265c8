using System.Text;
using InfusionSim.Cli.Commands;
using InfusionSim.Cli.Terminal;

namespace InfusionSim.Cli;

/// <summary>Starts the command line.</summary>
public static class Program
{
    /// <summary>Entry point.</summary>
    /// <param name="args">What was typed.</param>
    public static Task<int> Main(string[] args)
    {
        Console.OutputEncoding = Encoding.UTF8;
        return CommandLine.RunAsync(args, Screen.OfThisProcess());
    }
}

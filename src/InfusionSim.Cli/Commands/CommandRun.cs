using System.CommandLine;
using InfusionSim.Cli.Terminal;

namespace InfusionSim.Cli.Commands;

/// <summary>One run of a command: what was typed, where to write, when to stop.</summary>
/// <param name="Typed">What was typed.</param>
/// <param name="Screen">Where to write.</param>
/// <param name="Cancellation">Stops the run.</param>
public sealed record CommandRun(ParseResult Typed, Screen Screen, CancellationToken Cancellation);

using System.CommandLine;
using InfusionSim.Cli.Client;
using InfusionSim.Cli.Hosting;
using InfusionSim.Cli.Plans;
using InfusionSim.Cli.Terminal;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Cli.Commands;

/// <summary>What every command about one plan is told: the plan, changes of it, and where to compute.</summary>
internal sealed class PlanOptions
{
    private readonly Argument<string> _plan = CommandOptions.Plan();
    private readonly Option<string?> _resin = CommandOptions.ResinCard();
    private readonly Option<string[]> _set = CommandOptions.Set();
    private readonly Option<string?> _server = CommandOptions.Server();

    /// <summary>Gives a command its plan, its own options and the shared ones, in this order.</summary>
    /// <param name="command">The command.</param>
    /// <param name="own">Options of its own.</param>
    public PlanOptions(Command command, params IEnumerable<Option> own)
    {
        command.Add(_plan);
        foreach (Option option in own) command.Add(option);
        command.Add(_resin);
        command.Add(_set);
        command.Add(_server);
    }

    /// <summary>The plan file that was typed.</summary>
    /// <param name="typed">What was typed.</param>
    public string PathOf(ParseResult typed) => typed.GetRequiredValue(_plan);

    /// <summary>Reads the plan and finds the service.</summary>
    /// <param name="typed">What was typed.</param>
    /// <param name="screen">Where to write.</param>
    /// <param name="cancellation">Stops the waiting.</param>
    /// <returns>The plan, and the client to ask; the caller closes it.</returns>
    public async Task<(NamedPlan Plan, FillClient Client)> OpenAsync(ParseResult typed, Screen screen, CancellationToken cancellation)
    {
        string path = PathOf(typed);
        InfusionPlan plan = PlanFile.Read(path, [], screen.Error);
        if (typed.GetValue(_resin) is string card) CardOfPlan.Replace(plan, card);
        PlanFile.Change(plan, typed.GetValue(_set) ?? [], screen.Error);
        NamedPlan named = new(path, plan);
        screen.Begin($"Computing {path}");
        return (named, await ServiceLocation.OpenAsync(typed.GetValue(_server), cancellation));
    }
}

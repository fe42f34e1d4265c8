using InfusionSim.Cli.Answers;
using InfusionSim.Cli.Client;
using InfusionSim.Cli.Terminal;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;

namespace InfusionSim.Cli.Commands;

/// <summary>Watches a fill moment by moment and waits after each, so that clamps can be turned by hand; from there on it is computed anew.</summary>
/// <remarks>What a clamp does at one moment changes nothing before it, so the moments that were shown stay true.</remarks>
internal sealed class HandWatch(FillClient client, Screen screen, int moments, Func<FillMoment, string> say)
{
    private static readonly string[] Leaves = ["stop", "quit", "exit"];

    private readonly List<string> _turned = [];
    private bool _waits = true;

    /// <summary>Watches a plan to its end.</summary>
    /// <param name="named">The plan.</param>
    /// <param name="cancellation">Stops watching.</param>
    /// <returns>The plan with the turns in it, and its answer.</returns>
    public async Task<(NamedPlan Plan, PredictFillResponse Response)> RunAsync(NamedPlan named, CancellationToken cancellation)
    {
        PlanNames.FillIn(named.Plan);
        (List<FillMoment> ahead, PredictFillResponse response) = await ComputeAsync(named, cancellation);
        screen.Tell(HandTurn.Help(named.Plan) + ".");
        double shown = 0;
        while (ahead.Find(moment => moment.TimeS > shown) is FillMoment moment)
        {
            foreach (string seen in SeenOnTheWay.Between(response.Forecast, shown, moment.TimeS)) screen.Tell(seen);
            shown = moment.TimeS;
            screen.Answer(say(moment));
            screen.Output.Flush();
            while (_waits && await AskAsync(named.Plan, cancellation) is HandTurn turn)
            {
                NamedPlan turned = named with { Plan = turn.In(named.Plan, UnitConversion.Kept(shown / 60)) };
                if (await TryAsync(turned, cancellation) is not (List<FillMoment>, PredictFillResponse) anew) continue;
                (named, ahead, response) = (turned, anew.Ahead, anew.Response);
                _turned.Add($"{turn.Words} at {Amounts.Time(shown)}");
                screen.Tell($"{turn.Words} at {Amounts.Time(shown)}.");
            }
        }

        if (_turned.Count > 0) screen.Tell($"By hand: {string.Join(", ", _turned)}.");
        return (named, response);
    }

    // Null goes on to the next moment.
    private async Task<HandTurn?> AskAsync(InfusionPlan plan, CancellationToken cancellation)
    {
        while (true)
        {
            await screen.Error.WriteAsync($"[{HandTurn.Offer(plan)}] ");

            string? typed = (await ReadAsync(cancellation))?.Trim();
            if (typed is null) screen.Tell("");
            if (typed is not null && Leaves.Contains(typed, StringComparer.OrdinalIgnoreCase)) throw new OperationCanceledException();
            _waits = typed is not null && !typed.Equals("run", StringComparison.OrdinalIgnoreCase);
            if (!_waits || typed!.Length == 0) return null;
            try
            {
                return HandTurn.Read(typed, plan);
            }
            catch (FormatException exception)
            {
                screen.Tell(exception.Message);
            }
        }
    }

    // A terminal keeps a read waiting whatever is asked of it; Ctrl-C must not wait with it.
    private async Task<string?> ReadAsync(CancellationToken cancellation)
    {
        try
        {
            return await Task.Run(screen.Input.ReadLine, cancellation).WaitAsync(cancellation);
        }
        catch (OperationCanceledException)
        {
            screen.Tell("");
            throw;
        }
    }

    private async Task<(List<FillMoment> Ahead, PredictFillResponse Response)?> TryAsync(NamedPlan named, CancellationToken cancellation)
    {
        try
        {
            return await ComputeAsync(named, cancellation);
        }
        catch (CommandException refused) when (refused.ExitCode == ExitCodes.BadInput)
        {
            foreach (string line in refused.Lines) screen.Tell(line);
            return null;
        }
    }

    private async Task<(List<FillMoment> Ahead, PredictFillResponse Response)> ComputeAsync(NamedPlan named, CancellationToken cancellation)
    {
        List<FillMoment> ahead = [];
        screen.Begin($"Computing {named.Name}");
        PredictFillResponse response = await client.WatchAsync(new WatchFillRequest { Plan = named.Plan, Moments = moments }, named.Name, Keep, cancellation);
        return (ahead, response);

        void Keep(WatchFillResponse step)
        {
            if (step.Moment is FillMoment moment) ahead.Add(moment);
        }
    }
}

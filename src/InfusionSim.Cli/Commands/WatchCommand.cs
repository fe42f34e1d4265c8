using System.CommandLine;
using InfusionSim.Cli.Answers;
using InfusionSim.Cli.Client;
using InfusionSim.Cli.Terminal;
using InfusionSim.Protocol.Json;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;

namespace InfusionSim.Cli.Commands;

/// <summary>`watch`: the fill moment by moment, each as soon as it is computed.</summary>
public static class WatchCommand
{
    private const int BarWidth = 30;

    /// <summary>Makes the command.</summary>
    /// <param name="screen">Where to write.</param>
    public static Command Create(Screen screen)
    {
        Option<int> moments = new("--moments") { Description = "How many moments to show, 1 to 200.", DefaultValueFactory = _ => 12 };
        Option<bool> byHand = new("--by-hand") { Description = "Wait after each moment, so that clamps can be turned: open F2, open F2 30%, shut V1." };
        Option<bool> json = CommandOptions.Json();
        ExampleCommand command = new(
            "watch", "Watch the fill moment by moment, each as soon as it is computed.",
            "infusionsim watch plate.json --moments 6", "infusionsim watch plate.json --moments 6 --by-hand")
        {
            Footnote = "With --by-hand, type `shut V1` or `open F2` when the moment on the screen is the one to do it; the fill goes on from there.\n"
                + "Enter goes on to the next moment, `run` to the end, `stop` leaves.\n"
                + Cautions.Line,
        };
        PlanOptions options = new(command, moments, byHand);
        command.Add(json);
        command.SetAction(async (typed, cancellation) =>
        {
            (NamedPlan named, FillClient opened) = await options.OpenAsync(typed, screen, cancellation);
            await using FillClient client = opened;
            bool asJson = typed.GetValue(json);
            if (typed.GetValue(byHand)) return await ByHandAsync(named, client, screen, typed.GetValue(moments), asJson, cancellation);
            WatchFillRequest request = new() { Plan = named.Plan, Moments = typed.GetValue(moments) };
            PredictFillResponse response = await client.WatchAsync(request, named.Name, step => Tell(screen, step, asJson), cancellation);
            PlanAnswer answer = PlanAnswer.Of(named, response);
            if (!asJson) Conclude(screen, answer);
            return answer.MeetsGoals ? ExitCodes.Done : ExitCodes.GoalsNotMet;
        });
        return command;
    }

    private static async Task<int> ByHandAsync(NamedPlan named, FillClient client, Screen screen, int moments, bool asJson, CancellationToken cancellation)
    {
        if (asJson) throw new CommandException(ExitCodes.BadInput, "--by-hand talks with a person and --json with a program; leave one of them out.");
        (NamedPlan plan, PredictFillResponse response) = await new HandWatch(client, screen, moments, Line).RunAsync(named, cancellation);
        PlanAnswer answer = PlanAnswer.Of(plan, response);
        Conclude(screen, answer);
        return answer.MeetsGoals ? ExitCodes.Done : ExitCodes.GoalsNotMet;
    }

    private static void Conclude(Screen screen, PlanAnswer answer)
    {
        screen.Output.WriteLine();
        AnswerPrinter.Print(screen, answer);
        screen.Tell(Cautions.Line);
    }

    private static void Tell(Screen screen, WatchFillResponse step, bool asJson)
    {
        if (asJson) screen.Output.WriteLine(MessageWriter.WriteAnswer(step));
        else if (step.Moment is FillMoment moment) screen.Answer(Line(moment));
        screen.Output.Flush();
    }

    private static string Line(FillMoment moment)
    {
        int full = (int)Math.Round(BarWidth * moment.FilledFraction);
        string bar = new string('#', full).PadRight(BarWidth, '.');
        string bleed = moment.ResinOutCm3 >= 0.05 ? $", {Amounts.Volume(moment.ResinOutCm3)} out" : "";
        return $"{Amounts.Time(moment.TimeS),10}  {bar}  {Amounts.Percent(moment.FilledFraction),6} full, {Amounts.Volume(moment.ResinInCm3)} in{bleed}";
    }
}

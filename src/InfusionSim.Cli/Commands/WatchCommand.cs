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
        Option<bool> json = CommandOptions.Json();
        ExampleCommand command = new("watch", "Watch the fill moment by moment, each as soon as it is computed.", "infusionsim watch plate.json --moments 6")
        {
            Footnote = Cautions.Line,
        };
        PlanOptions options = new(command, moments);
        command.Add(json);
        command.SetAction(async (typed, cancellation) =>
        {
            (NamedPlan named, FillClient opened) = await options.OpenAsync(typed, screen, cancellation);
            await using FillClient client = opened;
            bool asJson = typed.GetValue(json);
            WatchFillRequest request = new() { Plan = named.Plan, Moments = typed.GetValue(moments) };
            PredictFillResponse response = await client.WatchAsync(request, named.Name, step => Tell(screen, step, asJson), cancellation);
            PlanAnswer answer = PlanAnswer.Of(named, response);
            if (!asJson)
            {
                screen.Output.WriteLine();
                AnswerPrinter.Print(screen, answer);
                screen.Error.WriteLine(Cautions.Line);
            }

            return answer.MeetsGoals ? ExitCodes.Done : ExitCodes.GoalsNotMet;
        });
        return command;
    }

    private static void Tell(Screen screen, WatchFillResponse step, bool asJson)
    {
        if (asJson) screen.Output.WriteLine(MessageWriter.WriteAnswer(step));
        else if (step.Moment is FillMoment moment) screen.Output.WriteLine(Line(moment));
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

using System.CommandLine;
using InfusionSim.Cli.Answers;
using InfusionSim.Cli.Client;
using InfusionSim.Cli.Terminal;
using InfusionSim.Protocol.Json;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Cli.Commands;

/// <summary>`mix`: how much resin and hardener to mix for one plan, and when to pour it.</summary>
public static class MixCommand
{
    // The widest label is Caution.
    private const int LabelWidth = 9;

    /// <summary>Makes the command.</summary>
    /// <param name="screen">Where to write.</param>
    public static Command Create(Screen screen)
    {
        Option<bool> json = CommandOptions.Json();
        ExampleCommand command = new(
            "mix", "Say how much resin and hardener to mix for one plan, in which batches, and when to pour them.",
            "infusionsim mix plate.json", "infusionsim mix plate.json --set resin.mixRatio.partsByMass=30 --set mix.largestBatchG=200g --set mix.reserveFraction=10%")
        {
            Footnote = "Exit code: 0 the fill meets its goals, 1 it does not, 2 bad input, 3 no service.\n" + Cautions.Line,
        };
        PlanOptions options = new(command);
        command.Add(json);
        command.SetAction(async (typed, cancellation) =>
        {
            (NamedPlan named, FillClient opened) = await options.OpenAsync(typed, screen, cancellation);
            await using FillClient client = opened;
            PlanMixResponse response = await client.MixAsync(named, cancellation);
            foreach (string warning in response.Warnings) screen.Tell($"Look     {warning}");
            if (typed.GetValue(json)) screen.Output.WriteLine(MessageWriter.WriteAnswer(response.Sheet, indented: true));
            else Print(screen, response);
            return GoalVerdict.IsMet(response.Plan, response.Forecast) ? ExitCodes.Done : ExitCodes.GoalsNotMet;
        });
        return command;
    }

    private static void Print(Screen screen, PlanMixResponse response)
    {
        screen.Clear();
        foreach (AnswerLine answer in response.Answer)
            foreach (string line in TextWrap.Lines(answer.Label, answer.Text, LabelWidth, screen.Width())) screen.Output.WriteLine(line);
    }
}

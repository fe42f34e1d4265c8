using System.CommandLine;
using InfusionSim.Cli.Answers;
using InfusionSim.Cli.Client;
using InfusionSim.Cli.Hosting;
using InfusionSim.Cli.Pictures;
using InfusionSim.Cli.Plans;
using InfusionSim.Cli.Terminal;
using InfusionSim.Protocol.Json;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Cli.Commands;

/// <summary>`compare`: several plans side by side.</summary>
public static class CompareCommand
{
    private const int MostPlans = 12;

    /// <summary>Makes the command.</summary>
    /// <param name="screen">Where to write.</param>
    public static Command Create(Screen screen)
    {
        Argument<string[]> plans = new("PLAN") { Description = "Plan files to compare, two or more.", Arity = new ArgumentArity(1, MostPlans) };
        Option<string[]> set = CommandOptions.Set();
        Option<string?> server = CommandOptions.Server();
        Option<bool> json = CommandOptions.Json();
        Option<string?> output = CommandOptions.OutputFile("Picture of the fronts side by side, .png or .svg; left out: none.");
        ExampleCommand command = new(
            "compare", "Put two or more plans side by side.",
            "infusionsim compare plate.json other.json", "infusionsim compare plate.json other.json -o both.png")
        {
            Footnote = "Exit code: 0 at least one meets its goals, 1 none does, 2 bad input, 3 no service.\n" + Cautions.Line,
        };
        command.Add(plans);
        command.Add(set);
        command.Add(server);
        command.Add(json);
        command.Add(output);
        command.SetAction(async (typed, cancellation) =>
        {
            string? picture = typed.GetValue(output);
            if (picture is not null) PictureFile.Check(picture, PictureKind.Front);
            string[] changes = typed.GetValue(set) ?? [];
            string[] paths = typed.GetRequiredValue(plans);
            if (paths.Length < 2)
                throw new CommandException(ExitCodes.BadInput, [$"compare needs two plans or more; there is only {paths[0]}.", "`infusionsim compare --help` shows what can be typed."]);
            NamedPlan[] named = Gathering.All(paths, (path, k) => new NamedPlan(path, PlanFile.Read(path, changes, k == 0 ? screen.Error : TextWriter.Null)));
            screen.Begin($"Computing {named.Length} plans");
            await using FillClient client = await ServiceLocation.OpenAsync(typed.GetValue(server), cancellation);
            PredictFillResponse[] responses = await Forecasting.PredictAllAsync(client, named, screen, cancellation);
            List<PlanAnswer> answers = [.. named.Zip(responses, PlanAnswer.Of)];
            Print(screen, answers, typed.GetValue(json));
            if (picture is not null)
            {
                FileWriter.Try(picture, () => PictureDrawing.SideBySide(answers).Save(picture));
                screen.Error.WriteLine($"Picture  {picture}");
            }

            return answers.Any(answer => answer.MeetsGoals) ? ExitCodes.Done : ExitCodes.GoalsNotMet;
        });
        return command;
    }

    private static void Print(Screen screen, List<PlanAnswer> answers, bool asJson)
    {
        foreach (PlanAnswer answer in answers) AnswerPrinter.PrintWarnings(screen, answer.Response);
        if (asJson)
        {
            screen.Output.WriteLine("[");
            for (int k = 0; k < answers.Count; k++)
                screen.Output.WriteLine(MessageWriter.WriteAnswer(answers[k].Forecast, indented: true) + (k < answers.Count - 1 ? "," : ""));
            screen.Output.WriteLine("]");
            return;
        }

        screen.Clear();
        foreach (string line in Comparison.Table(answers, screen.Width())) screen.Output.WriteLine(line);
        if (answers.Count == 2)
        {
            screen.Output.WriteLine();
            screen.Output.WriteLine($"{answers[1].Name} against {answers[0].Name}:");
            foreach (string line in Comparison.Difference(answers[0], answers[1])) screen.Answer("  " + line);
        }

        screen.Tell(Cautions.Line);
    }
}

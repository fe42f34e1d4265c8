using System.CommandLine;
using InfusionSim.Cli.Answers;
using InfusionSim.Cli.Client;
using InfusionSim.Cli.Demo;
using InfusionSim.Cli.Hosting;
using InfusionSim.Cli.Pictures;
using InfusionSim.Cli.Plans;
using InfusionSim.Cli.Terminal;
using InfusionSim.Protocol.V1;
using Path = System.IO.Path;

namespace InfusionSim.Cli.Commands;

/// <summary>`demo`: one panel, two line plans, what goes wrong with the first and what the second does about it.</summary>
public static class DemoCommand
{
    /// <summary>Makes the command.</summary>
    /// <param name="screen">Where to write.</param>
    public static Command Create(Screen screen)
    {
        Option<string?> output = new("--output", "-o") { Description = "Folder for plans and pictures; left out: infusionsim-demo.", HelpName = "FOLDER" };
        Option<string?> server = CommandOptions.Server();
        ExampleCommand command = new("demo", "See it work: one panel, two line plans, both answers, plans and pictures in a folder.", "infusionsim demo -o infusionsim-demo")
        {
            Footnote = Cautions.Line,
        };
        command.Add(output);
        command.Add(server);
        command.SetAction(async (typed, cancellation) =>
        {
            DemoText.Introduce(screen);
            await using FillClient client = await ServiceLocation.OpenAsync(typed.GetValue(server), cancellation);
            await RunAsync(client, typed.GetValue(output) ?? "infusionsim-demo", screen, cancellation);
            return ExitCodes.Done;
        });
        return command;
    }

    private static async Task RunAsync(FillClient client, string folder, Screen screen, CancellationToken cancellation)
    {
        NamedPlan first = new(Path.Combine(folder, "first.json"), SledDeck.First());
        NamedPlan second = new(Path.Combine(folder, "second.json"), SledDeck.Second());
        PredictFillResponse[] responses = await Forecasting.PredictAllAsync(client, [first, second], screen, cancellation);
        PlanAnswer before = PlanAnswer.Of(first, responses[0]), after = PlanAnswer.Of(second, responses[1]);
        DemoText.Tell(screen, "FIRST LINE PLAN: a feed along the lower edge, one vent in the middle of the upper edge", before);
        DemoText.Tell(screen, "SECOND LINE PLAN: the feed goes round the lower left corner, the vent sits where the cloth fills last", after);
        DemoText.Compare(screen, before, after);

        FileWriter.Write(first.Name, PlanText.Of(first.Plan));
        FileWriter.Write(second.Name, PlanText.Of(second.Plan));
        string[] pictures = [Path.Combine(folder, "first-front.png"), Path.Combine(folder, "second-front.png")];
        FileWriter.Try(pictures[0], () => PictureDrawing.Front(before).Save(pictures[0]));
        FileWriter.Try(pictures[1], () => PictureDrawing.Front(after).Save(pictures[1]));

        screen.Output.WriteLine();
        screen.Output.WriteLine($"Plans    {first.Name}, {second.Name}");
        screen.Output.WriteLine($"Pictures {pictures[0]}, {pictures[1]}");
        screen.Output.WriteLine($"Next     infusionsim compare {first.Name} {second.Name}");
        screen.Output.WriteLine("         infusionsim new plate 600x400 -o plate.json");
        screen.Tell(Cautions.Line);
    }
}

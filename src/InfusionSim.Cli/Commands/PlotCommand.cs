using System.CommandLine;
using InfusionSim.Cli.Answers;
using InfusionSim.Cli.Client;
using InfusionSim.Cli.Hosting;
using InfusionSim.Cli.Pictures;
using InfusionSim.Cli.Plans;
using InfusionSim.Cli.Quantities;
using InfusionSim.Cli.Terminal;
using InfusionSim.Protocol.Json;

namespace InfusionSim.Cli.Commands;

/// <summary>`plot`: draws one picture of a plan's forecast.</summary>
public static class PlotCommand
{
    private static readonly string[] Kinds = [.. Enum.GetNames<PictureKind>().Select(name => name.ToLowerInvariant())];

    /// <summary>Makes the command.</summary>
    /// <param name="screen">Where to write.</param>
    public static Command Create(Screen screen)
    {
        Argument<string> plan = CommandOptions.Plan();
        Option<string> picture = new("--picture") { Description = $"One of {string.Join(", ", Kinds)}.", DefaultValueFactory = _ => "front", HelpName = "PICTURE" };
        Option<string?> output = CommandOptions.OutputFile("Picture file to write: .png or .svg, .webp for the animation; left out: named after plan and picture.");
        Option<string?> at = new("--at") { Description = "Moment of the pressure picture, from the opening of the first feed: 90s, 12min; left out: half way.", HelpName = "TIME" };
        Option<string[]> set = CommandOptions.Set();
        Option<string?> server = CommandOptions.Server();
        ExampleCommand command = new(
            "plot", "Draw a picture of one plan's fill.",
            "infusionsim plot plate.json --picture front -o front.png", "infusionsim plot plate.json --picture pressure --at 5min -o pressure.svg");
        command.Add(plan);
        command.Add(picture);
        command.Add(output);
        command.Add(at);
        command.Add(set);
        command.Add(server);
        command.SetAction(async (typed, cancellation) =>
        {
            string path = typed.GetRequiredValue(plan);
            PictureKind kind = KindOf(typed.GetRequiredValue(picture));
            string file = typed.GetValue(output) ?? PictureFile.NameFor(path, kind);
            PictureFile.Check(file, kind);
            double? time = TimeOf(typed.GetValue(at));
            NamedPlan named = new(path, PlanFile.Read(path, typed.GetValue(set) ?? [], screen.Error));
            screen.Begin($"Computing {path}");
            await using FillClient client = await ServiceLocation.OpenAsync(typed.GetValue(server), cancellation);
            PlanAnswer answer = PlanAnswer.Of(named, await Forecasting.PredictAsync(client, named, screen, cancellation));
            AnswerPrinter.PrintWarnings(screen, answer.Response);
            string sentence = await PictureDrawing.SaveAsync(kind, client, answer, time, file, cancellation);
            screen.Output.WriteLine(file);
            screen.Error.WriteLine(sentence);
            return ExitCodes.Done;
        });
        return command;
    }

    private static PictureKind KindOf(string typed)
    {
        int index = Array.IndexOf(Kinds, typed.ToLowerInvariant());
        if (index >= 0) return Enum.GetValues<PictureKind>()[index];
        string hint = NearestKey.Of(typed, Kinds) is string nearest ? $" Did you mean {nearest}?" : "";
        throw new CommandException(ExitCodes.BadInput, $"there is no picture '{typed}'.{hint} Pictures: {string.Join(", ", Kinds)}.");
    }

    private static double? TimeOf(string? typed)
    {
        if (typed is null) return null;
        try
        {
            double seconds = 60 * QuantityReader.Read("timeMin", typed, 0).Value;
            return seconds >= 0 ? seconds : throw new FormatException("time counts from the opening of the first feed and cannot lie before it.");
        }
        catch (FormatException exception)
        {
            throw new CommandException(ExitCodes.BadInput, $"--at {typed}: {exception.Message}");
        }
    }
}

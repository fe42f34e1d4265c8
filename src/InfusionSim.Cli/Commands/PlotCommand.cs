using System.CommandLine;
using InfusionSim.Cli.Answers;
using InfusionSim.Cli.Client;
using InfusionSim.Cli.Pictures;
using InfusionSim.Cli.Quantities;
using InfusionSim.Cli.Terminal;
using InfusionSim.Protocol.Json;
using InfusionSim.Protocol.Words;

namespace InfusionSim.Cli.Commands;

/// <summary>`plot`: draws one picture of a plan's forecast.</summary>
public static class PlotCommand
{
    /// <summary>Makes the command.</summary>
    /// <param name="screen">Where to write.</param>
    public static Command Create(Screen screen)
    {
        Option<string> picture = new("--picture") { Description = $"One of {string.Join(", ", PictureNames.All)}.", DefaultValueFactory = _ => "front", HelpName = "PICTURE" };
        Option<string?> output = CommandOptions.OutputFile("Picture file to write: .png or .svg, .webp for the animation; left out: named after plan and picture.");
        Option<string?> at = new("--at") { Description = "Moment of the pressure picture, from the opening of the first feed: 90s, 12min; left out: half way.", HelpName = "TIME" };
        ExampleCommand command = new(
            "plot", "Draw a picture of one plan's fill.",
            "infusionsim plot plate.json --picture front -o front.png", "infusionsim plot mesh.json --picture tool-side -o tool-side.png",
            "infusionsim plot mesh.json --picture both-sides -o both-sides.png", "infusionsim plot mesh.json --picture lag -o lag.png",
            "infusionsim plot line.json --picture lines -o lines.png", "infusionsim plot plate.json --picture speed -o speed.png",
            "infusionsim plot plate.json --picture gel-margin -o gel-margin.png", "infusionsim plot plate.json --picture capillary --set resin.surfaceTensionMnPerM=35 -o capillary.png",
            "infusionsim plot plate.json --picture pressure --at 5min -o pressure.svg")
        {
            Footnote = "Pictures:\n" + PictureNames.Explained,
        };
        PlanOptions options = new(command, picture, output, at);
        command.SetAction(async (typed, cancellation) =>
        {
            PictureKind kind = KindOf(typed.GetRequiredValue(picture));
            string file = typed.GetValue(output) ?? PictureFile.NameFor(options.PathOf(typed), kind);
            PictureFile.Check(file, kind);
            double? time = TimeOf(typed.GetValue(at));
            (NamedPlan named, FillClient opened) = await options.OpenAsync(typed, screen, cancellation);
            await using FillClient client = opened;
            PlanAnswer answer = PlanAnswer.Of(named, await Forecasting.PredictAsync(client, named, screen, cancellation, PictureFit.NeedsQuality(kind)));
            AnswerPrinter.PrintWarnings(screen, answer.Response);
            PictureFit.Check(kind, answer);
            string sentence = await PictureDrawing.SaveAsync(kind, client, answer, time, file, cancellation);
            screen.Clear();
            screen.Output.WriteLine(file);
            if (kind == PictureKind.Pressure && time > answer.Forecast.EndTimeS)
                screen.Tell($"Look     --at {typed.GetValue(at)} is after the end of the forecast; the picture shows its end, {Amounts.Time(answer.Forecast.EndTimeS)}.");
            screen.Tell(sentence);
            return ExitCodes.Done;
        });
        return command;
    }

    private static PictureKind KindOf(string typed)
    {
        string[] kinds = [.. PictureNames.All];
        int index = Array.IndexOf(kinds, typed.ToLowerInvariant());
        if (index >= 0) return Enum.GetValues<PictureKind>()[index];
        string hint = NearestKey.Of(typed, kinds) is string nearest ? $" Did you mean {nearest}?" : "";
        throw new CommandException(ExitCodes.BadInput, $"there is no picture '{typed}'.{hint} Pictures: {string.Join(", ", PictureNames.All)}.");
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

using System.CommandLine;
using InfusionSim.Cli.Answers;
using InfusionSim.Cli.Client;
using InfusionSim.Cli.Terminal;
using InfusionSim.Protocol.Forecasts;

namespace InfusionSim.Cli.Commands;

/// <summary>`fill`: the forecast of one plan in a few lines.</summary>
public static class FillCommand
{
    /// <summary>Makes the command.</summary>
    /// <param name="screen">Where to write.</param>
    public static Command Create(Screen screen)
    {
        Option<bool> json = CommandOptions.Json();
        ExampleCommand command = new(
            "fill", "Predict one plan: when it is full, what fills last, what stays dry.",
            "infusionsim fill plate.json", "infusionsim fill plate.json --set resin.viscosityPaS=300mPa.s --set \"bag.pressureMbarAbs=-0.95bar(g)\"",
            "infusionsim fill plate.json --resin calm.json --set shop.temperatureDegC=18degC",
            "infusionsim fill plate.json --set slope.angleDeg=20 --set \"feeds[0].boreMm=8mm\" --set \"feeds[0].hose.boreMm=8mm\" --set \"feeds[0].hose.lengthM=1.5m\"")
        {
            Footnote = "Exit code: 0 it meets its goals, 1 it does not, 2 bad input, 3 no service.\n" + Cautions.Line,
        };
        PlanOptions options = new(command);
        command.Add(json);
        command.SetAction(async (typed, cancellation) =>
        {
            (NamedPlan named, FillClient opened) = await options.OpenAsync(typed, screen, cancellation);
            await using FillClient client = opened;
            PlanAnswer answer = PlanAnswer.Of(named, await Forecasting.PredictAsync(client, named, screen, cancellation));
            if (typed.GetValue(json))
            {
                AnswerPrinter.PrintWarnings(screen, answer.Response);
                screen.Output.WriteLine(ForecastJson.Write(answer.Forecast));
            }
            else
            {
                AnswerPrinter.Print(screen, answer);
                screen.Tell(Cautions.Line);
            }

            return answer.MeetsGoals ? ExitCodes.Done : ExitCodes.GoalsNotMet;
        });
        return command;
    }
}

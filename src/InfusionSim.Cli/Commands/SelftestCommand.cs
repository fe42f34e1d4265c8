using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using InfusionSim.Cli.Client;
using InfusionSim.Cli.Hosting;
using InfusionSim.Cli.Selftest;
using InfusionSim.Cli.Terminal;
using InfusionSim.Protocol.Units;

namespace InfusionSim.Cli.Commands;

/// <summary>`selftest`: panels of which a number is known from a formula, on four grids, through the service.</summary>
public static class SelftestCommand
{
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, PropertyNamingPolicy = JsonNamingPolicy.CamelCase };

    /// <summary>Makes the command.</summary>
    /// <param name="screen">Where to write.</param>
    public static Command Create(Screen screen)
    {
        Option<string?> server = CommandOptions.Server();
        Option<bool> json = CommandOptions.Json();
        ExampleCommand command = new("selftest", "Check this program against formulas: fill times, pressures, what stays dry.", "infusionsim selftest")
        {
            Footnote = "Exit code: 0 all as they should be, 1 at least one is off, 3 no service.",
        };
        command.Add(server);
        command.Add(json);
        command.SetAction(async (typed, cancellation) =>
        {
            await using FillClient client = await ServiceLocation.OpenAsync(typed.GetValue(server), cancellation);
            IReadOnlyList<SelftestResult> results = await screen.WithProgressAsync("Checking", told => new SelftestRun(client).RunAsync(ClosedForms.All, told, cancellation));
            Print(screen, results, typed.GetValue(json));
            return results.All(result => result.Passes) ? ExitCodes.Done : ExitCodes.GoalsNotMet;
        });
        return command;
    }

    private static void Print(Screen screen, IReadOnlyList<SelftestResult> results, bool asJson)
    {
        if (asJson)
        {
            screen.Output.WriteLine(JsonSerializer.Serialize(results.Select(ForJson), Indented));
            return;
        }

        List<IReadOnlyList<string>> rows = [["Check", "by formula", .. SelftestResult.Across.Select(across => $"{across} across"), "order", ""]];
        rows.AddRange(results.Select(Row));
        foreach (string line in TextTable.Lines(rows, screen.Width())) screen.Output.WriteLine(line);
        screen.Output.WriteLine();
        screen.Answer(
            "In the columns: error on 25, 50, 100 and 200 squares across. Order: how often the error halves when the squares do; - where what is left is not theirs.");
        int off = results.Count(result => !result.Passes);
        screen.Output.WriteLine(off == 0 ? $"All {results.Count} as they should be." : $"{off} of {results.Count} are off. Please report this table.");
    }

    private static IReadOnlyList<string> Row(SelftestResult result) =>
    [
        result.Check.Name,
        result.Check.Expected.ToString(result.Check.Expected < 10 ? "0.0000" : "0.00", CultureInfo.InvariantCulture) + (result.Check.Unit.Length > 0 ? $" {result.Check.Unit}" : ""),
        .. result.Errors.Select(error => Math.Abs(error) < 1e-6 ? "0" : Numbers.Figures(100 * error, 2) + " %"),
        result.IsExact ? "exact" : result.IsSettled ? "-" : result.Order.ToString("0.0", CultureInfo.InvariantCulture),
        result.Passes ? "ok" : "OFF",
    ];

    private static object ForJson(SelftestResult result) => new
    {
        Check = result.Check.Name,
        result.Check.Source,
        result.Check.Expected,
        result.Check.Unit,
        SquaresAcross = SelftestResult.Across,
        ErrorRatios = result.Errors.Select(error => double.IsFinite(error) ? error : (double?)null),
        Order = result.IsSettled || !double.IsFinite(result.Order) ? (double?)null : result.Order,
        result.Passes,
    };
}

using System.CommandLine;
using InfusionSim.Cli.Answers;
using InfusionSim.Cli.Client;
using InfusionSim.Cli.Hosting;
using InfusionSim.Cli.Pictures;
using InfusionSim.Cli.Plans;
using InfusionSim.Cli.Terminal;
using InfusionSim.Plots;
using InfusionSim.Protocol.Json;
using InfusionSim.Protocol.Requests;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Cli.Commands;

/// <summary>`resins`: several resins on one plan.</summary>
public static class ResinsCommand
{
    /// <summary>Makes the command.</summary>
    /// <param name="screen">Where to write.</param>
    public static Command Create(Screen screen)
    {
        Argument<string> plan = CommandOptions.Plan();
        Argument<string[]> cards = new("CARD") { Description = "Resin cards to compare, one or more: .json, or .csv of a measured viscosity.", Arity = new ArgumentArity(1, RequestLimits.MostResins) };
        Option<string[]> set = CommandOptions.Set();
        Option<string?> server = CommandOptions.Server();
        Option<bool> json = CommandOptions.Json();
        Option<string?> output = CommandOptions.OutputFile("Picture of how each resin fills, thickens and gels, .png or .svg; left out: none.");
        ExampleCommand command = new(
            "resins", "Compare resins on one plan: which fills, how soon, with how much time to gel.",
            "infusionsim resins plate.json quick.json calm.json", "infusionsim resins plate.json quick.json calm.json -o resins.png")
        {
            Footnote = "A card is a file with what stands under `resin` in a plan, alone:\n"
                + "  { \"name\": \"Quick\", \"viscosityPaS\": 0.2, \"gelTimeMin\": 30, \"densityKgPerM3\": 1100 }\n"
                + "The plan's own resin is not compared, unless you name its card too; its mixToOpenMin holds for cards without one.\n"
                + "A .csv of minutes from mixing and viscosity is a card too; it takes the rest from the plan's resin.\n"
                + "Exit code: 0 at least one resin meets the plan's goals, 1 none does, 2 bad input, 3 no service.\n" + Cautions.Line,
        };
        command.Add(plan);
        command.Add(cards);
        command.Add(set);
        command.Add(server);
        command.Add(json);
        command.Add(output);
        command.SetAction(async (typed, cancellation) =>
        {
            string? picture = typed.GetValue(output);
            if (picture is not null) PictureFile.Check(picture, PictureKind.Progress);
            string planPath = typed.GetRequiredValue(plan);
            string[] cardPaths = typed.GetRequiredValue(cards);
            InfusionPlan asked = new();
            Resin[] resins = Gathering.All<Resin>([planPath, .. cardPaths], (path, k) =>
            {
                if (k > 0) return CardOf(asked, path);
                asked = PlanFile.Read(path, typed.GetValue(set) ?? [], screen.Error);
                return new Resin();
            })[1..];
            CompareResinsRequest request = new() { Plan = asked, Cards = { ResinNames.Apart(resins, cardPaths) } };
            screen.Begin($"Computing {cardPaths.Length} resins");
            await using FillClient client = await ServiceLocation.OpenAsync(typed.GetValue(server), cancellation);
            CompareResinsResponse response = await CompareAsync(client, request, planPath, cardPaths, cancellation);
            Print(screen, response, cardPaths, typed.GetValue(json));
            if (picture is not null)
            {
                FileWriter.Try(picture, () => ResinCurves.Draw(asked, response).Save(picture));
                screen.Error.WriteLine($"Picture  {picture}");
            }

            return response.HasBestIndex ? ExitCodes.Done : ExitCodes.GoalsNotMet;
        });
        return command;
    }

    // A card without a name is called by its file; a curve has none of its own.
    private static Resin CardOf(InfusionPlan plan, string path)
    {
        InfusionPlan own = plan.Clone();
        CardOfPlan.Replace(own, path);
        if (string.IsNullOrWhiteSpace(own.Resin.Name) || CurveFile.IsOne(path)) own.Resin.Name = System.IO.Path.GetFileNameWithoutExtension(path);
        return own.Resin;
    }

    private static async Task<CompareResinsResponse> CompareAsync(
        FillClient client, CompareResinsRequest request, string planPath, IReadOnlyList<string> cardPaths, CancellationToken cancellation)
    {
        try
        {
            return await client.CompareResinsAsync(request, planPath, cancellation);
        }
        catch (CommandException refusal)
        {
            throw new CommandException(refusal.ExitCode, [.. refusal.Lines.Select(line => CardPlaces.ByFile(line, cardPaths))]);
        }
    }

    private static void Print(Screen screen, CompareResinsResponse response, IReadOnlyList<string> cardPaths, bool asJson)
    {
        foreach (string warning in response.Warnings) screen.Tell($"Look     {CardPlaces.ByFile(warning, cardPaths)}");
        if (asJson)
        {
            screen.Output.WriteLine(MessageWriter.WriteAnswer(response, indented: true));
            return;
        }

        screen.Clear();
        foreach (string line in ResinTable.Lines(response, screen.Width())) screen.Output.WriteLine(line);
        screen.Output.WriteLine();
        foreach (AnswerLine said in response.Answer)
            foreach (string line in TextWrap.Lines(said.Label, said.Text, labelWidth: 9, screen.Width())) screen.Output.WriteLine(line);
        screen.Tell(Cautions.Line);
    }
}

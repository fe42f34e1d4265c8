using System.CommandLine;
using InfusionSim.Cli.Plans;
using InfusionSim.Cli.Shapes;
using InfusionSim.Cli.Terminal;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Cli.Commands;

/// <summary>`new`: writes a plan to begin with.</summary>
public static class NewCommand
{
    /// <summary>Makes the command.</summary>
    /// <param name="screen">Where to write.</param>
    public static Command Create(Screen screen)
    {
        Argument<string> shape = new("SHAPE") { Description = $"One of {string.Join(", ", PanelShapes.All.Select(one => one.Name))}." };
        Argument<string[]> size = new("SIZE")
        {
            Description = "In millimetres or with a unit: 600x400, 0.6mx0.4m, 500.",
            Arity = ArgumentArity.OneOrMore,
        };
        Option<string?> output = CommandOptions.OutputFile("Plan file to write; left out: SHAPE.json; - for the screen.");
        Option<bool> mesh = new("--mesh") { Description = "Lay a flow mesh over the whole bag side." };
        Option<string[]> set = CommandOptions.Set();
        Option<bool> force = new("--force") { Description = "Write over a file that is there." };
        ExampleCommand command = new(
            "new", "Write a plan to begin with: a shape, its size, a first line plan.", "infusionsim new plate 600x400 -o plate.json", "infusionsim new disc 0.5m -o disc.json",
            "infusionsim new strip 800x100 --mesh --set \"flowMeshes[0].thicknessMm=1.2mm\" -o meshed.json")
        {
            Footnote = "Shapes:\n" + string.Join('\n', TextTable.Lines([.. PanelShapes.All.Select(one => (string[])["  " + one.Name, one.Sizes, one.Lines])])),
        };
        command.Add(shape);
        command.Add(size);
        command.Add(output);
        command.Add(mesh);
        command.Add(set);
        command.Add(force);
        command.SetAction(typed =>
        {
            string name = typed.GetRequiredValue(shape);
            InfusionPlan plan = FirstPlan.Of(name, string.Concat(typed.GetRequiredValue(size)));
            if (typed.GetValue(mesh)) FirstPlan.LayMesh(plan);
            PlanFile.Change(plan, typed.GetValue(set) ?? [], screen.Error);
            string path = typed.GetValue(output) ?? name.ToLowerInvariant() + ".json";
            if (PlanChecker.Check(plan).Faults is { Count: > 0 } faults) throw PlanFile.Refuse(path, faults);
            Write(screen, plan, path, typed.GetValue(force));
            return ExitCodes.Done;
        });
        return command;
    }

    private static void Write(Screen screen, InfusionPlan plan, string path, bool writeOver)
    {
        string text = PlanText.Of(plan);
        if (path == "-")
        {
            screen.Output.Write(text);
            return;
        }

        if (File.Exists(path) && !writeOver)
            throw new CommandException(ExitCodes.BadInput, $"{path} is there already. Name another file with -o, or write over it with --force.");
        FileWriter.Write(path, text);
        screen.Output.WriteLine(path);
        screen.Tell($"{plan.Title}: {Count(plan.Feeds.Count, "feed")}, {Count(plan.Vents.Count, "vent")}, {(plan.FlowMeshes.Count > 0 ? "a flow mesh, " : "")}cloth, resin and bag to begin with.");
        screen.Tell("Put your own numbers in, from your data sheets and your own measurements.");
        screen.Tell($"Next     infusionsim fill {path}");
    }

    private static string Count(int count, string what) => count == 1 ? $"one {what}" : $"{count} {what}s";
}

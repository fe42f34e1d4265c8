using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Checks what is to be done with clamps and vacuum while the panel fills.</summary>
internal static class ClampCheck
{
    /// <summary>Checks a plan whose names are filled in.</summary>
    public static void Run(InfusionPlan plan, FaultList faults)
    {
        ClampedLine[] lines = [.. ClampedLine.Of(plan)];
        foreach (ClampedLine line in lines) CheckLine(line, plan, faults);
        for (int k = 0; k < (plan.Bag?.Steps.Count ?? 0); k++) CheckStep(plan.Bag!, k, plan, faults);
        if (plan.Bag is not null) CheckApart([.. PlannedTurn.Of(plan).Where(static turn => turn.Line.Length == 0)], "the vacuum", faults);
        CheckStart([.. lines.Take(plan.Feeds.Count)], faults);
        ClampCircles.Run([.. lines.Skip(plan.Feeds.Count)], faults);
    }

    private static void CheckLine(ClampedLine line, InfusionPlan plan, FaultList faults)
    {
        if (line.Opens is not null) MomentCheck.Run(line.Opens, line.Path + ".opens", plan, faults);
        if (line.Shuts is not null) MomentCheck.Run(line.Shuts, line.Path + ".shuts", plan, faults);
        for (int k = 0; k < line.Steps.Count; k++) MomentCheck.Run(line.Steps[k].When, $"{line.Path}.clampSteps[{k}].when", plan, faults);
        CheckHose(line, line.OpenFraction, line.Path + ".openFraction", faults);
        for (int k = 0; k < line.Steps.Count; k++) CheckHose(line, line.Steps[k].OpenFraction, $"{line.Path}.clampSteps[{k}].openFraction", faults);
        CheckOrder(line, faults);
        CheckApart([.. line.Turns()], line.Title, faults);
    }

    private static void CheckHose(ClampedLine line, double? openFraction, string path, FaultList faults)
    {
        if (line.HasHose || openFraction is not (> 0 and < 1) || faults.HasAt(path)) return;
        faults.Add(path, $"{path} is {Numbers.Say(openFraction.Value)}, but {line.Title} has no hose: it is the share of the hose's conductance that the clamp leaves. "
            + $"Give {line.Path}.hose, or leave openFraction out.");
    }

    private static void CheckOrder(ClampedLine line, FaultList faults)
    {
        string path = line.Path + ".shuts";
        if (line.Shuts is not { HasAtMin: true } shuts || faults.HasUnder(path) || faults.HasUnder(line.Path + ".opens")) return;
        if (line.Opens is null && shuts.AtMin == 0)
            faults.Add(path, $"{line.Title} shuts at 0 min, as the first feed opens: it would never be open. Leave it out of the plan, or let it shut later.");
        else if (line.Opens is { HasAtMin: true } opens && shuts.AtMin < opens.AtMin)
            faults.Add(path, $"{line.Title} shuts at {Numbers.Say(shuts.AtMin)} min, before it opens at {Numbers.Say(opens.AtMin)} min. "
                + "Let it shut later, or take clampSteps for a line that is open at first.");
    }

    // Which of two turns at one moment would count, nobody could tell.
    private static void CheckApart(PlannedTurn[] turns, string what, FaultList faults)
    {
        for (int k = 0; k < turns.Length; k++)
        {
            if (turns.Take(k).FirstOrDefault(before => before.IsAt(turns[k].When)) is not PlannedTurn first) continue;
            if (faults.HasUnder(turns[k].Path) || faults.HasUnder(first.Path)) continue;
            faults.Add(turns[k].Path, $"{turns[k].Path} and {first.Path} name one moment: {what} cannot be set twice at once. Leave one of them out.");
        }
    }

    private static void CheckStep(Bag bag, int index, InfusionPlan plan, FaultList faults)
    {
        string path = $"bag.steps[{index}]";
        MomentCheck.Run(bag.Steps[index].When, path + ".when", plan, faults);
        string key = path + ".pressureMbarAbs";
        double pressure = bag.Steps[index].PressureMbarAbs;
        if (!bag.Steps[index].HasPressureMbarAbs || pressure < bag.AmbientMbarAbs || faults.HasUnder(key) || faults.HasUnder("bag.ambientMbarAbs")) return;
        faults.Add(key, $"{key} is {Numbers.Say(pressure)} mbar, not below the air around the bag ({Numbers.Say(bag.AmbientMbarAbs)} mbar): "
            + "nothing holds the bag down any more.");
    }

    private static void CheckStart(ClampedLine[] feeds, FaultList faults)
    {
        if (feeds.Length == 0 || faults.HasUnder("feeds") || feeds.Any(static feed => feed.Opens is null or { HasAtMin: true, AtMin: 0 })) return;
        faults.Add("feeds", "no feed is open at the start: every one of them waits to be opened. "
            + "Leave opens out of the feed that opens first; all times count from that moment.");
    }
}

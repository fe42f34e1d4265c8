using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Words;

/// <summary>The answer in the few lines that a laminator reads before the clamp is opened.</summary>
public static class FillWords
{
    /// <summary>The lines of the answer.</summary>
    /// <param name="plan">The plan, with its defaults.</param>
    /// <param name="forecast">The forecast.</param>
    /// <param name="map">When the front passes each square; null when it is not at hand, then a last edge is named by its corner.</param>
    /// <param name="planFile">Name of the plan's file for the command that comes next; null leaves that line out.</param>
    public static IReadOnlyList<FillLine> Lines(InfusionPlan plan, FillForecast forecast, FrontMap? map = null, string? planFile = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(forecast);
        var lines = new List<FillLine>
        {
            OutcomeWords.Line(forecast, plan),
            new("Gel", GelWords.Text(forecast, plan)),
            new("Last", LastText(forecast, map, plan)),
        };
        lines.AddRange(SideWords.Lines(forecast));
        lines.AddRange(LineWords.Lines(forecast));
        lines.AddRange(VentWords.Lines(forecast, plan));
        lines.AddRange(ClampWords.Lines(forecast, plan));
        lines.AddRange(BleedWords.Lines(forecast, plan));
        lines.AddRange(QualityWords.Lines(forecast));
        lines.AddRange(BagWords.Lines(forecast, plan));
        lines.Add(new FillLine("Air", AirWords.Text(forecast, plan)));
        lines.Add(new FillLine("Resin", ResinWords.Text(forecast, plan)));
        lines.AddRange(CardWords.Lines(forecast, plan));
        lines.AddRange(LaminateWords.Lines(forecast, plan));
        lines.Add(new FillLine("Sure?", SureText(forecast, plan)));
        if (planFile is not null) lines.Add(new FillLine("Next", NextText(forecast, plan, planFile)));
        return lines;
    }

    /// <summary>The lines as one text, labels aligned, without a line break at its end.</summary>
    /// <param name="lines">The lines.</param>
    public static string Text(IReadOnlyList<FillLine> lines)
    {
        ArgumentNullException.ThrowIfNull(lines);
        int width = Math.Max(9, lines.Max(line => line.Label.Length) + 2);
        return string.Join("\n", lines.Select(line => line.Label.PadRight(width) + line.Text));
    }

    private static string LastText(FillForecast forecast, FrontMap? map, InfusionPlan plan)
    {
        if (forecast.LastToFill is null) return LeakWords.DrivesResinOut(forecast) ? "no place stays full" : "no place can fill";
        string place = PlaceWords.OfLast(forecast, map, plan);
        return forecast.Outcome switch
        {
            Outcome.GelsFirst => $"{place}, not reached before it gels",
            Outcome.PotRunsDry => $"{place}, not reached before the pot is empty",
            Outcome.StopsShort => $"{place}, of what the resin can reach",
            _ => place,
        };
    }

    private static string SureText(FillForecast forecast, InfusionPlan plan)
    {
        double error = Math.Abs(forecast.NumericalErrorRatio);
        string numerical = error < 1e-3 ? "below 0.1 %" : $"about {Numbers.Figures(100 * error, 1)} %";
        double factor = plan.Preform is { HasPermeabilityFactor: true } preform ? preform.PermeabilityFactor : PlanDefaults.PermeabilityFactor;
        string band = factor > 1
            ? $"the band comes from the cloth (×/÷{Numbers.Say(factor)}, not measured here)"
            : "no band: the permeability is taken as exact";
        // Towards the height of its climb the resin only creeps, so its time says little; the height is what is known.
        string known = forecast.Outcome == Outcome.StopsShort && forecast.HasHeightReachedMm ? $"the height is known to one square, {Amounts.Length(plan.Resolution.CellMm)}"
            : LeakWords.DrivesResinOut(forecast) ? "where the leak lies decides; it is taken as spread over the panel"
            : $"numerical error {numerical}";
        return $"{known}; {band}";
    }

    private static string NextText(FillForecast forecast, InfusionPlan plan, string planFile) => forecast.Outcome switch
    {
        Outcome.Fills => $"infusionsim compare {planFile} other.json",
        Outcome.GelsFirst => $"shorten the way or take a slower resin, then infusionsim compare {planFile} other.json",
        Outcome.TrapsAir when LeakWords.DrivesResinOut(forecast) => $"find the leak, then infusionsim fill {planFile} with what the next drop test shows",
        Outcome.TrapsAir => $"infusionsim plot {planFile} --picture front -o front.png shows the dry spot; put a vent there",
        Outcome.StopsShort when forecast.HasHeightReachedMm => $"raise the pot or feed from higher up, then infusionsim compare {planFile} other.json",
        Outcome.StopsShort when forecast.Findings.Any(static finding => finding is { Kind: FindingKind.StopsShort, Line.Length: > 0 }) =>
            $"raise the pot, then infusionsim fill {planFile}",
        Outcome.StopsShort when ClampWords.AllFeedsShut(forecast, plan) => $"let a feed stay open longer, then infusionsim compare {planFile} other.json",
        Outcome.StopsShort => $"give the dry place a feed of its own; infusionsim plot {planFile} --picture front -o front.png shows it",
        Outcome.PotRunsDry => $"infusionsim mix {planFile} says how much to mix",
        _ => $"infusionsim plot {planFile} --picture front -o front.png shows how far it gets",
    };
}

using InfusionSim.Cli.Terminal;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;

namespace InfusionSim.Cli.Answers;

/// <summary>Resins on one plan as a table, a resin in each row.</summary>
public static class ResinTable
{
    /// <summary>The rows, in the order of the cards, with a heading.</summary>
    /// <param name="response">The answer.</param>
    /// <param name="width">Letters that a line of the screen holds [-]; null where nobody reads along an edge.</param>
    public static IEnumerable<string> Lines(CompareResinsResponse response, int? width = null)
    {
        ArgumentNullException.ThrowIfNull(response);
        return TextTable.Lines(
        [
            ["", "Outcome", "Full", "Two in three", "Gel", "Gel margin", "Viscosity", "To mix", "Goals"],
            .. response.Resins.Select((resin, index) => Row(index + 1, resin)),
        ], width);
    }

    private static IReadOnlyList<string> Row(int number, ResinOnPlan resin)
    {
        FillForecast forecast = resin.Forecast;
        return
        [
            $"{number} {resin.Name}",
            OutcomeWords.LabelOf(forecast.Outcome),
            forecast.HasFillTimeS ? Amounts.Time(forecast.FillTimeS) : $"{Amounts.Percent(forecast.FilledFraction)} full",
            Likely(forecast),
            Amounts.Time(forecast.GelTimeS),
            forecast.HasGelMarginRatio ? $"{Numbers.Figures(forecast.GelMarginRatio, 2)} times" : "-",
            ResinComparisonWords.Viscosity(resin),
            Amounts.Weight(resin.ResinToMixG),
            resin.MeetsGoals ? "met" : "not met",
        ];
    }

    private static string Likely(FillForecast forecast) => forecast.Likely switch
    {
        { HasFillTimeFromS: true, HasFillTimeToS: true } band => Amounts.TimeRange(band.FillTimeFromS, band.FillTimeToS),
        { HasFillTimeFromS: true } band => $"{Amounts.Time(band.FillTimeFromS)} to gelling first",
        _ => "-",
    };
}

using InfusionSim.Planning.Resins;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.Words;
using Contract = InfusionSim.Protocol.V1;
using Domain = InfusionSim.Planning.Resins;

namespace InfusionSim.Protocol.Forecasts;

/// <summary>Turns a comparison of resins into the contract's: names and units added, words with it.</summary>
public static class ResinComparisonMapping
{
    /// <summary>Maps a comparison.</summary>
    /// <param name="resins">What each resin does.</param>
    /// <param name="inputs">What each was computed from, in the same order.</param>
    /// <param name="warnings">Readings that look odd but can be computed.</param>
    public static Contract.CompareResinsResponse ToContract(IReadOnlyList<ResinOnPanel> resins, IReadOnlyList<FillInputs> inputs, IReadOnlyList<string> warnings)
    {
        ArgumentNullException.ThrowIfNull(resins);
        ArgumentNullException.ThrowIfNull(inputs);
        var answer = new Contract.CompareResinsResponse
        {
            Resins = { resins.Select((resin, index) => ToContract(resin, inputs[index], index)) },
            Warnings = { warnings },
        };
        if (ResinChoice.BestOf(resins) is int best) answer.BestIndex = best;
        answer.Answer.AddRange(ResinComparisonWords.Lines(inputs[0].Plan, answer).Select(line => new Contract.AnswerLine { Label = line.Label, Text = line.Text }));
        return answer;
    }

    private static Contract.ResinOnPlan ToContract(ResinOnPanel resin, FillInputs inputs, int index)
    {
        Contract.FillForecast forecast = ForecastMapping.ToContract(resin.Forecast, inputs);
        var answer = new Contract.ResinOnPlan
        {
            Name = NameOf(inputs.Plan.Resin, index),
            Card = inputs.Plan.Resin,
            Forecast = forecast,
            MeetsGoals = resin.MeetsGoals,
            ViscosityAtOpeningPaS = Finite.Needed(resin.ViscosityAtOpening, "the viscosity at opening"),
            ResinToMixG = UnitConversion.GramsFromKilograms(Finite.Needed(resin.ToMix, "the resin to mix")),
            SharesFlow = resin.Sharing == FlowSharing.Shared,
            FlowAgainBecause = ResinComparisonWords.Because(resin.Sharing, resin.TakenUntil),
            Curve = { resin.Curve.Select(ToPoint) },
            BestTemperature = resin.BestTemperature is Domain.BestTemperature best ? ToContract(best) : null,
        };
        if (Finite.OrNone(resin.ViscosityAtEnd) is double end) answer.ViscosityAtEndPaS = end;
        return answer;
    }

    private static string NameOf(Contract.Resin card, int index) => string.IsNullOrWhiteSpace(card.Name) ? $"Resin{index + 1}" : card.Name;

    private static Contract.ResinCurvePoint ToPoint(ResinMoment moment)
    {
        var point = new Contract.ResinCurvePoint
        {
            TimeS = Finite.Needed(moment.Time, "a time"),
            FilledFraction = Finite.Needed(moment.FilledFraction, "a filled fraction"),
            DriveRatio = Finite.Needed(moment.DriveRatio, "a drive ratio"),
        };
        if (Finite.OrNone(moment.Viscosity) is double viscosity) point.ViscosityPaS = viscosity;
        return point;
    }

    private static Contract.BestTemperature ToContract(Domain.BestTemperature best)
    {
        var answer = new Contract.BestTemperature
        {
            Found = best.KeepsMargin,
            TemperatureDegC = UnitConversion.DegCFromKelvin(best.Temperature),
            GelMarginRatio = Finite.Needed(best.GelMargin, "a gel margin"),
            LowestDegC = UnitConversion.DegCFromKelvin(best.Lowest),
            HighestDegC = UnitConversion.DegCFromKelvin(best.Highest),
            IsBoundByBoiling = best.IsBoundByBoiling,
            BoilsThroughout = best.BoilsThroughout,
        };
        if (Finite.OrNone(best.FillTime) is double time) answer.FillTimeS = time;
        return answer;
    }
}

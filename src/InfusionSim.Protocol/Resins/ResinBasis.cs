using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;

namespace InfusionSim.Protocol.Resins;

/// <summary>Says in words how viscosity and gel time were found, where the card holds more than two plain numbers.</summary>
internal static class ResinBasis
{
    private const string Rule = "halves for every 10 °C warmer (common practice)";

    /// <summary>The sentences, without a full stop.</summary>
    public static IEnumerable<string> Of(InfusionPlan plan)
    {
        Resin card = plan.Resin;
        IReadOnlyList<(string Path, double DegC)> temperatures = ShopCheck.Temperatures(plan.Shop);
        bool isCourse = temperatures.Count > 1;
        foreach (string sentence in OfViscosity(card, temperatures, isCourse)) yield return sentence;
        foreach (string sentence in OfGel(card, temperatures, isCourse)) yield return sentence;
        if (card.Source.Length > 0) yield return $"numbers from: {card.Source}";
    }

    private static IEnumerable<string> OfViscosity(Resin card, IReadOnlyList<(string Path, double DegC)> temperatures, bool isCourse)
    {
        if (card.ViscosityTemperatures.Count > 0)
        {
            yield return $"viscosity from a line through {card.ViscosityTemperatures.Count} temperatures, {Numbers.Say(card.ViscosityTemperatures.Min(row => row.DegC))} to {Numbers.Say(card.ViscosityTemperatures.Max(row => row.DegC))} °C; "
                + $"the row that fits worst is {Numbers.Figures(100 * ResinMapping.ToFit(card)!.Residual, 2)} % off it{Beyond("resin.viscosityTemperatures", card, temperatures)}";
        }
        else if (card.ViscosityCurve is ViscosityCurve curve)
        {
            yield return $"viscosity as measured over time{(curve.HasAtDegC ? $" at {Numbers.Say(curve.AtDegC)} °C" : "")}, {(curve.Points[0].AtMin == 0 ? "up" : Amounts.Time(60 * curve.Points[0].AtMin))} to {Amounts.Time(60 * curve.Points[^1].AtMin)} after mixing";
        }
        else if (IsCarried(card.HasViscosityAtDegC, card.ViscosityAtDegC, temperatures, isCourse))
        {
            yield return $"viscosity {At(card.HasViscosityAtDegC, card.ViscosityAtDegC)}carried to {To(temperatures)}: it {Law(card.HasViscosityActivationKjPerMol, card.ViscosityActivationKjPerMol)}{Beyond("resin.viscosityAtDegC", card, temperatures)}";
        }

        if (card.ViscosityRise is ViscosityRise rise)
        {
            string carried = IsCarried(rise.HasAtDegC, rise.AtDegC, temperatures, isCourse) ? $"; that time {Law(rise.HasActivationKjPerMol, rise.ActivationKjPerMol)}" : "";
            yield return rise.HasDoublingMin
                ? $"it doubles every {Amounts.Time(60 * rise.DoublingMin)}{(rise.HasAtDegC ? $" at {Numbers.Say(rise.AtDegC)} °C" : "")}{carried}{Beyond("resin.viscosityRise.atDegC", card, temperatures)}"
                : "it thickens with age as the card says (dual Arrhenius)";
        }

        if (card.Kinetics?.Thickening is not null) yield return $"it thickens with its degree of cure (Castro and Macosko){Beyond("resin.kinetics", card, temperatures)}";
    }

    private static IEnumerable<string> OfGel(Resin card, IReadOnlyList<(string Path, double DegC)> temperatures, bool isCourse)
    {
        bool hasStated = card.HasGelTimeMin || card.HasPotLifeMin;
        if (hasStated)
        {
            if (!card.HasGelTimeMin) yield return "the pot life is taken as the gel time, which is cautious";
            if (card.HasGelTimeMassG) yield return $"gel time of a cup of {Amounts.Weight(card.GelTimeMassG)}, which warms itself: thin cloth on a tool gels later, so the cup's figure is the cautious one";
            if (IsCarried(card.HasGelTimeAtDegC, card.GelTimeAtDegC, temperatures, isCourse))
                yield return $"gel time {At(card.HasGelTimeAtDegC, card.GelTimeAtDegC)}carried to {To(temperatures)}: it {Law(card.HasGelTimeActivationKjPerMol, card.GelTimeActivationKjPerMol)}{Beyond("resin.gelTimeAtDegC", card, temperatures)}";
        }

        if (card.Kinetics is CureKinetics kinetics)
            yield return $"gels at a degree of cure of {Numbers.Say(kinetics.GelConversion)} by its kinetics{(hasStated ? ", or at the stated time if that comes first" : "")}{Beyond("resin.kinetics", card, temperatures)}";
        if (card.ViscosityCurve is ViscosityCurve curve)
            yield return $"nothing is known after the last reading at {Amounts.Time(60 * curve.Points[^1].AtMin)}: gel there at the latest";
    }

    private static bool IsCarried(bool hasAt, double atDegC, IReadOnlyList<(string Path, double DegC)> temperatures, bool isCourse) =>
        isCourse || (hasAt && temperatures.Count > 0 && temperatures[0].DegC != atDegC);

    private static string At(bool hasAt, double atDegC) => hasAt ? $"at {Numbers.Say(atDegC)} °C " : "";

    private static string To(IReadOnlyList<(string Path, double DegC)> temperatures)
    {
        double coldest = temperatures.Min(one => one.DegC), warmest = temperatures.Max(one => one.DegC);
        return coldest == warmest ? $"{Numbers.Say(coldest)} °C" : $"{Numbers.Say(coldest)} to {Numbers.Say(warmest)} °C";
    }

    private static string Law(bool hasActivation, double activation) => hasActivation ? $"falls with warmth by {Numbers.Say(activation)} kJ/mol" : Rule;

    private static string Beyond(string path, Resin card, IReadOnlyList<(string Path, double DegC)> temperatures) =>
        MeasuredRange.Of(card).FirstOrDefault(range => range.Path == path) is MeasuredRange range && temperatures.Any(one => range.IsExtrapolated(one.DegC))
            ? ", beyond what was measured"
            : "";
}

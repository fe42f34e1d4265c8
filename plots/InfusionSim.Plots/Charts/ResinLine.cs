using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;

namespace InfusionSim.Plots.Charts;

/// <summary>One resin of a comparison, as its curves are drawn.</summary>
/// <param name="Number">Number on the picture, from 1 [-].</param>
/// <param name="Resin">What the resin does on the plan.</param>
/// <param name="Style">How its curves are drawn.</param>
internal sealed record ResinLine(int Number, ResinOnPlan Resin, ResinLineStyle Style)
{
    /// <summary>The lines of a comparison, in its order.</summary>
    internal static IReadOnlyList<ResinLine> Of(CompareResinsResponse response) =>
        [.. response.Resins.Select((resin, i) => new ResinLine(i + 1, resin, ResinLineStyle.Of(i)))];

    /// <summary>Its number and its name.</summary>
    internal string Name => $"{Number} {Resin.Name}";

    /// <summary>When the fill ends, or gel [s].</summary>
    internal double EndS => Resin.Forecast.EndTimeS;

    /// <summary>When it gels [s].</summary>
    internal double GelS => Resin.Forecast.GelTimeS;

    /// <summary>Whether it gels before the last place is full.</summary>
    internal bool GelsFirst => Resin.Forecast.Outcome == Outcome.GelsFirst;

    /// <summary>How the fill ends, in few words.</summary>
    internal string End => Resin.Forecast switch
    {
        { Outcome: Outcome.Fills, HasFillTimeS: true } fills => $"full at {Amounts.Time(fills.FillTimeS)}",
        { Outcome: Outcome.GelsFirst } gels => $"gels at {Amounts.Time(gels.GelTimeS)}, {Amounts.Percent(gels.FilledFraction)} full",
        _ => $"at rest at {Amounts.Time(EndS)}, {Amounts.Percent(Resin.Forecast.FilledFraction)} full",
    };

    /// <summary>How the fill ends and when the resin gels.</summary>
    internal string Story => GelsFirst ? End : $"{End}, gel at {Amounts.Time(GelS)}";
}

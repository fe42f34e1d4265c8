using InfusionSim.Protocol.V1;

namespace InfusionSim.Plots.Tests.Samples;

/// <summary>Comparisons of resins made from formulas, so that a test knows where every curve must lie.</summary>
internal static class ResinAnswers
{
    /// <summary>So many resins on a straight strip, each fuller later than the one before; every third gels half-way.</summary>
    internal static CompareResinsResponse Strip(int count) => new()
    {
        Resins = { Enumerable.Range(0, count).Select(i => Resin($"Resin {(char)('A' + i)}", 600 + 300 * i, i % 3 == 2 ? 0.25 : 1.6)) },
        BestIndex = 0,
        Answer = { new AnswerLine { Label = "Best", Text = "Resin A, the quickest to fill: full 10 min after opening" } },
    };

    /// <summary>A resin that follows the square root of time and thickens to twenty times its viscosity at gel.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="fullS">When the strip is full, whatever the gel time [s].</param>
    /// <param name="margin">Gel margin [-].</param>
    internal static ResinOnPlan Resin(string name, double fullS, double margin)
    {
        var (gelS, endS) = (margin * fullS, Math.Min(1, margin) * fullS);
        var forecast = new FillForecast
        {
            Outcome = margin < 1 ? Outcome.GelsFirst : Outcome.Fills,
            EndTimeS = endS,
            GelTimeS = gelS,
            GelMarginRatio = margin,
            FilledFraction = Math.Sqrt(endS / fullS),
        };
        if (margin >= 1)
        {
            forecast.FillTimeS = fullS;
        }

        return new ResinOnPlan
        {
            Name = name,
            Forecast = forecast,
            ViscosityAtOpeningPaS = 0.2,
            SharesFlow = true,
            Curve =
            {
                Enumerable.Range(0, 101).Select(i => gelS * i / 100).Select(time => new ResinCurvePoint
                {
                    TimeS = time, FilledFraction = Math.Sqrt(Math.Min(time, endS) / fullS), ViscosityPaS = 0.2 * Math.Pow(20, time / gelS), DriveRatio = time / fullS,
                }),
            },
        };
    }
}

using InfusionSim.Physics.Resins;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.Resins;
using InfusionSim.Protocol.Units;
using Contract = InfusionSim.Protocol.V1;
using Domain = InfusionSim.Physics.Forecasts;

namespace InfusionSim.Protocol.Forecasts;

/// <summary>Turns the resin on its way into the contract's: how warm, how thick, how far cured, and where that comes from.</summary>
internal static class ResinForecastMapping
{
    /// <summary>Maps the resin of a forecast.</summary>
    public static Contract.ResinForecast ToContract(Domain.Forecast forecast, FillInputs inputs)
    {
        Contract.Resin card = inputs.Plan.Resin;
        Resin resin = inputs.Resin;
        bool isExtrapolated = ShopCheck.Temperatures(inputs.Plan.Shop).Any(one => MeasuredRange.Of(card).Any(range => range.IsExtrapolated(one.DegC)));
        var answer = new Contract.ResinForecast
        {
            ViscosityAtOpeningPaS = Kept(forecast.Clock.ViscosityAt(0), "the viscosity at opening"),
            IsExtrapolated = isExtrapolated,
            Basis = { ResinBasis.Of(inputs.Plan) },
        };
        if (forecast.Clock.ViscosityAt(forecast.EndTime) is var end && double.IsFinite(end)) answer.ViscosityAtEndPaS = UnitConversion.Kept(end);
        if (resin.Temperature is TemperatureCourse course)
        {
            answer.TemperatureAtOpeningDegC = UnitConversion.DegCFromKelvin(course.At(0));
            answer.TemperatureAtEndDegC = UnitConversion.DegCFromKelvin(course.At(forecast.EndTime));
        }

        if (ResinMapping.ToFit(card) is ViscosityFit fit) answer.FitResidualRatio = UnitConversion.Kept(fit.Residual);
        if (resin.Cure() is not CureCourse cure) return answer;
        answer.ConversionAtEnd = Kept(cure.ConversionAt(forecast.EndTime), "the degree of cure");
        if (resin.Kinetics!.HandlingConversion is double handling && cure.TimeOf(handling) is var time && double.IsFinite(time)) answer.HandlingTimeS = UnitConversion.Kept(time);
        return answer;
    }

    private static double Kept(double value, string what) => UnitConversion.Kept(Finite.Needed(value, what));
}

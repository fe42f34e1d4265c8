using InfusionSim.Protocol.Forecasts;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;
using Forecast = InfusionSim.Physics.Forecasts.Forecast;

namespace InfusionSim.Service.Fills;

/// <summary>Puts the answer to a plan together.</summary>
internal static class FillAnswer
{
    /// <summary>The answer: numbers, words, warnings, the plan with its defaults, the front map when asked for.</summary>
    public static PredictFillResponse Of(Forecast forecast, FillInputs inputs, IReadOnlyList<string> warnings, bool withFrontMap, bool withQuality = false)
    {
        FrontMap map = FrontMapMapping.ToContract(forecast, withQuality);
        FillForecast answer = ForecastMapping.ToContract(forecast, inputs);
        return new PredictFillResponse
        {
            Forecast = answer,
            FrontMap = withFrontMap || withQuality ? map : null,
            Plan = inputs.Plan,
            Warnings = { warnings },
            Answer = { FillWords.Lines(inputs.Plan, answer, map).Select(line => new AnswerLine { Label = line.Label, Text = line.Text }) },
        };
    }
}

using InfusionSim.Plots.Charts;
using InfusionSim.Plots.Keys;
using InfusionSim.Plots.Styling;
using InfusionSim.Plots.Words;
using InfusionSim.Protocol.V1;
using SkiaSharp;

namespace InfusionSim.Plots;

/// <summary>The picture of the wet share against time, with gel time, fill time, vents and the likely band.</summary>
public static class WetShare
{
    private const float ChartHeight = 400;

    /// <summary>Draws the progress.</summary>
    /// <param name="plan">The plan that was asked about.</param>
    /// <param name="response">Its answer.</param>
    /// <param name="moments">Moments up to the end, in order of time; at least one; about 40 give a smooth line.</param>
    /// <exception cref="ArgumentException">When there is no forecast or no moment.</exception>
    public static Picture Draw(InfusionPlan plan, PredictFillResponse response, IReadOnlyList<FillMoment> moments)
    {
        plan = Require.Plan(plan);
        Require.Forecast(response);
        Require.Moments(moments);
        var sentence = ForecastText.Sentence(plan, response);
        var (left, width) = (Theme.Margin, Theme.PictureWidth - 2 * Theme.Margin);
        var top = Header.Height(sentence, width);
        var area = SKRect.Create(left + ProgressChart.LeftRoom, top + 6, width - ProgressChart.LeftRoom - 6, ChartHeight);
        var chart = new ProgressChart(plan, response.Forecast, moments, area);
        var height = area.Bottom + ProgressChart.BottomRoom + Theme.Margin - 8;
        return new Picture(Theme.PictureWidth, (int)MathF.Ceiling(height), $"{plan.Title}, wet share against time: {sentence}", canvas =>
        {
            Header.Draw(canvas, plan.Title, Badge.Of(plan, response.Forecast), sentence, left, width);
            chart.Draw(canvas);
        });
    }
}

using InfusionSim.Plots.Fronts;
using InfusionSim.Plots.Keys;
using InfusionSim.Plots.Panels;
using InfusionSim.Plots.Styling;
using InfusionSim.Plots.Words;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Plots;

/// <summary>The fronts of two or more plans side by side, on one scale of times; on the bag side where there are layers.</summary>
public static class Comparison
{
    /// <summary>Draws the fronts side by side.</summary>
    /// <param name="answers">Two or more plans with their answers and front maps, in the order to show them.</param>
    /// <exception cref="ArgumentException">When there are fewer than two, or one has no front map.</exception>
    public static Picture Draw(IReadOnlyList<(InfusionPlan Plan, PredictFillResponse Response)> answers)
    {
        if (answers.Count < 2)
        {
            throw new ArgumentException($"There is nothing to compare: {answers.Count} plan given; give two or more.", nameof(answers));
        }

        var panels = answers.Select(answer => PanelAnswer.Of(answer.Plan, answer.Response)).ToArray();
        var scale = new TimeScale(panels.Max(panel => panel.Forecast.EndTimeS));
        var row = new FrontRow(
            [.. panels.Select(panel => new FrontCell(panel, panel.Title, Badge.Of(panel.Plan, panel.Forecast), ForecastText.Short(panel.Plan, panel.Forecast)))],
            scale, Theme.Margin - 4);
        var key = new PictureKey(row.Signs, scale.Key());
        var keyTop = row.Bottom + 14;
        var sentence = string.Join(" ", panels.Select(panel => $"{panel.Title}: {panel.Sentence}"));
        return new Picture(Theme.PictureWidth, key.PictureHeight(keyTop), sentence, canvas =>
        {
            row.Draw(canvas);
            key.Draw(canvas, keyTop);
        });
    }
}

using InfusionSim.Plots.Contours;
using InfusionSim.Plots.Fronts;
using InfusionSim.Plots.Keys;
using InfusionSim.Plots.Panels;
using InfusionSim.Plots.Styling;
using InfusionSim.Plots.Words;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;
using SkiaSharp;

namespace InfusionSim.Plots;

/// <summary>The picture of the front: when the resin reaches each place, where it comes last, where it never comes.</summary>
public static class Front
{
    private const float LabelBorder = 40;
    private const float MostHeight = 700;

    /// <summary>Draws the front.</summary>
    /// <param name="plan">The plan that was asked about.</param>
    /// <param name="response">Its answer, with the front map.</param>
    /// <exception cref="ArgumentException">When the answer has no front map.</exception>
    public static Picture Draw(InfusionPlan plan, PredictFillResponse response)
    {
        plan = Require.Plan(plan);
        Require.FrontMap(response);
        var (scene, layout) = Prepare(plan, response);
        var signs = PanelKey.Signs(plan, scene.DrySpots.Count > 0, scene.NeverReached.Count > 0, scene.Last is not null);
        var sentence = ForecastText.Sentence(plan, response);
        var scale = new TimeScale(response.Forecast.EndTimeS);
        var keyTop = layout.Area.Bottom + PanelFrame.BottomRoom + 12;
        var (left, width) = (Theme.Margin, Theme.PictureWidth - 2 * Theme.Margin);
        var height = keyTop + ClassBar.Height + SignKey.Rows(signs, width) * SignKey.RowHeight + Theme.Margin - 6;
        return new Picture(Theme.PictureWidth, (int)MathF.Ceiling(height), $"{plan.Title}: {sentence}", canvas =>
        {
            Header.Draw(canvas, plan.Title, Badge.Of(plan, response.Forecast), sentence, left, width);
            PanelFrame.Draw(canvas, layout, scene.Draw);
            ClassBar.Draw(
                canvas, new SKRect(left, keyTop, left + width, keyTop + ClassBar.Height), "Front arrives", scale.Colours, scale.Texts, "0",
                Amounts.Time(response.Forecast.EndTimeS));
            SignKey.Draw(canvas, signs, left, keyTop + ClassBar.Height, width);
        });
    }

    /// <summary>The panel of the picture, with its labels placed.</summary>
    internal static (FrontScene Scene, PanelView View) Prepare(InfusionPlan plan, PredictFillResponse response)
    {
        var cloth = new ClothArea(plan);
        var sentence = ForecastText.Sentence(plan, response);
        var top = Header.Height(sentence, Theme.PictureWidth - 2 * Theme.Margin);
        var left = Theme.Margin + PanelFrame.LeftRoom - 10;
        var width = Theme.PictureWidth - Theme.Margin - left;
        var area = SKRect.Create(left, top, width, PanelView.HeightFor(cloth, width, LabelBorder, MostHeight));
        var view = PanelView.Fit(cloth, area, LabelBorder);
        return (new FrontScene(plan, response, view, new TimeScale(response.Forecast.EndTimeS)), view);
    }
}

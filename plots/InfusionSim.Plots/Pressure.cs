using InfusionSim.Plots.Contours;
using InfusionSim.Plots.Keys;
using InfusionSim.Plots.Panels;
using InfusionSim.Plots.Pressures;
using InfusionSim.Plots.Styling;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;
using SkiaSharp;

namespace InfusionSim.Plots;

/// <summary>The picture of the resin pressure at one moment, with the front.</summary>
public static class Pressure
{
    private const float LabelBorder = 40;
    private const float MostHeight = 640;

    /// <summary>Draws the pressure.</summary>
    /// <param name="plan">The plan that was asked about.</param>
    /// <param name="response">Its answer, with the front map.</param>
    /// <param name="moment">The moment, with pressures.</param>
    /// <exception cref="ArgumentException">When there is no front map or the moment has no pressures.</exception>
    public static Picture Draw(InfusionPlan plan, PredictFillResponse response, FillMoment moment)
    {
        plan = Require.Plan(plan);
        Require.FrontMap(response);
        Require.Pressure(moment);
        var cloth = new ClothArea(plan);
        var isEnd = moment.TimeS >= response.Forecast.EndTimeS * (1 - 1e-6);
        var sentence = Sentence(plan, moment);
        var (left, width) = (Theme.Margin, Theme.PictureWidth - 2 * Theme.Margin);
        var areaLeft = Theme.Margin + PanelFrame.LeftRoom - 10;
        var areaWidth = Theme.PictureWidth - Theme.Margin - areaLeft;
        var area = SKRect.Create(areaLeft, Header.Height(sentence, width), areaWidth, PanelView.HeightFor(cloth, areaWidth, LabelBorder, MostHeight));
        var view = PanelView.Fit(cloth, area, LabelBorder);
        var scene = new PressureScene(plan, response, moment, view, isEnd);
        var signs = PanelKey.Signs(plan, isEnd && scene.HasDrySpots, isEnd && scene.HasNeverReached, false)
            .Where(sign => sign != KeySign.TimingMark).Concat(isEnd ? [] : [KeySign.Front, KeySign.Dry]).ToArray();
        var keyTop = area.Bottom + PanelFrame.BottomRoom + 12;
        var height = keyTop + ClassBar.Height + SignKey.Rows(signs, width) * SignKey.RowHeight + Theme.Margin - 6;
        var title = $"{plan.Title}: resin pressure at {Amounts.Time(moment.TimeS)}";
        return new Picture(Theme.PictureWidth, (int)MathF.Ceiling(height), $"{title}. {sentence}", canvas =>
        {
            Header.Draw(canvas, title, null, sentence, left, width);
            PanelFrame.Draw(canvas, view, scene.Draw);
            ClassBar.Draw(
                canvas, new SKRect(left, keyTop, left + width, keyTop + ClassBar.Height), "mbar absolute", scene.Colours,
                [.. scene.LevelsMbar.Select(level => $"{level:0}")], $"{scene.LowMbar:0}", $"{scene.HighMbar:0}");
            SignKey.Draw(canvas, signs, left, keyTop + ClassBar.Height, width);
        });
    }

    private static string Sentence(InfusionPlan plan, FillMoment moment)
    {
        var (low, high) = (plan.Bag.PressureMbarAbs, (double)moment.PressureMbarAbs.Max());
        return $"{Amounts.Percent(moment.FilledFraction)} of the cloth is wet; the pressure falls from {high:0} mbar absolute at the feed to {low:0} mbar at the front.";
    }
}

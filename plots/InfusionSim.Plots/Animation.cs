using InfusionSim.Plots.Contours;
using InfusionSim.Plots.Keys;
using InfusionSim.Plots.Panels;
using InfusionSim.Plots.Styling;
using InfusionSim.Plots.Words;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;
using SkiaSharp;

namespace InfusionSim.Plots;

/// <summary>The front as it runs through the cloth.</summary>
public static class Animation
{
    private const int Width = 520;
    private const float Side = 16;
    private const float Top = 62;
    private const float MostHeight = 420;
    private const int FrameMs = 160;
    private const int LastFrameMs = 2400;

    /// <summary>Draws one still for each moment.</summary>
    /// <param name="plan">The plan that was asked about.</param>
    /// <param name="response">Its answer, with the front map.</param>
    /// <param name="moments">The moments to show, in order of time; at least one; about 24 run smoothly.</param>
    /// <exception cref="ArgumentException">When there is no front map or no moment.</exception>
    public static AnimatedPicture Draw(InfusionPlan plan, PredictFillResponse response, IReadOnlyList<FillMoment> moments)
    {
        plan = Require.Plan(plan);
        Require.FrontMap(response);
        Require.Moments(moments);
        var cloth = new ClothArea(plan);
        var map = new ArrivalMap(response.FrontMap, cloth);
        var area = SKRect.Create(Side - 6, Top, Width - 2 * Side + 12, PanelView.HeightFor(cloth, Width - 2 * Side + 12, 10, MostHeight));
        var view = new FillView(plan, cloth, map, PanelView.Fit(cloth, area, 10));
        var scale = new TimeLine(response.Forecast);
        var height = (int)MathF.Ceiling(area.Bottom + TimeLine.Height);
        var frames = moments.Select((moment, i) => new Picture(Width, height, Amounts.Time(moment.TimeS), canvas =>
        {
            var isEnd = moment.TimeS >= response.Forecast.EndTimeS * (1 - 1e-6);
            var badge = isEnd ? Badge.Of(plan, response.Forecast).Draw(canvas, Width - Side, 24) : 0;
            TextStyle.StrongLabel.Draw(canvas, Header.Shorten(plan.Title, Width - 2 * Side - badge - 8, TextStyle.StrongLabel), Side, 22, Theme.Ink);
            TextStyle.Label.Draw(canvas, $"{Amounts.Time(moment.TimeS)} after opening, {Amounts.Percent(moment.FilledFraction)} wet", Side, 45, Theme.Ink);
            view.Draw(canvas, moment.TimeS, isEnd, [.. Fronts.TimeScale.Earlier(response.Forecast.EndTimeS, moment.TimeS)]);
            scale.Draw(canvas, moment.TimeS, Side, area.Bottom + 14, Width - 2 * Side);
        })).ToArray();
        var durations = frames.Select((_, i) => i == frames.Length - 1 ? LastFrameMs : FrameMs).ToArray();
        return new AnimatedPicture($"{plan.Title}, moving: {ForecastText.Sentence(plan, response)}", frames, durations);
    }
}

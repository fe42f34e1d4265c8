using InfusionSim.Plots.Keys;
using InfusionSim.Plots.Panels;
using InfusionSim.Plots.Styling;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;
using SkiaSharp;

namespace InfusionSim.Plots;

/// <summary>The front as it runs through the cloth; on the bag side where there are layers.</summary>
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
        var answer = PanelAnswer.Of(plan, response);
        Require.Moments(moments);
        var panelHeight = PanelView.HeightFor(answer.Cloth, Width - 2 * Side + 12, 10, MostHeight);
        var area = SKRect.Create(Side - 6, Top, Width - 2 * Side + 12, panelHeight);
        var view = new FillView(answer, PanelView.Fit(answer.Cloth, area, 10));
        var scale = new TimeLine(answer.Forecast);
        var height = (int)MathF.Ceiling(area.Bottom + TimeLine.Height);
        var frames = moments.Select((moment, i) => new Picture(Width, height, Amounts.Time(moment.TimeS), canvas =>
        {
            var isEnd = answer.IsEnd(moment);
            var badge = isEnd ? Badge.Of(answer.Plan, answer.Forecast).Draw(canvas, Width - Side, 24) : 0;
            TextStyle.StrongLabel.Draw(canvas, Header.Shorten(answer.Title, Width - 2 * Side - badge - 8, TextStyle.StrongLabel), Side, 22, Theme.Ink);
            TextStyle.Label.Draw(canvas, $"{Amounts.Time(moment.TimeS)} after opening, {Amounts.Percent(moment.FilledFraction)} wet", Side, 45, Theme.Ink);
            view.Draw(canvas, moment.TimeS, isEnd, [.. Fronts.TimeScale.Earlier(answer.Forecast.EndTimeS, moment.TimeS)]);
            scale.Draw(canvas, moment.TimeS, Side, area.Bottom + 14, Width - 2 * Side);
        })).ToArray();
        var durations = frames.Select((_, i) => i == frames.Length - 1 ? LastFrameMs : FrameMs).ToArray();
        return new AnimatedPicture($"{answer.Title}, moving: {answer.Sentence}", frames, durations);
    }
}

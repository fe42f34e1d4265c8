using InfusionSim.Plots.Keys;
using InfusionSim.Plots.Panels;
using InfusionSim.Plots.Pressures;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;

namespace InfusionSim.Plots;

/// <summary>The picture of the resin pressure at one moment, with the front; on the bag side where there are layers.</summary>
public static class Pressure
{
    private const float MostHeight = 640;

    /// <summary>Draws the pressure.</summary>
    /// <param name="plan">The plan that was asked about.</param>
    /// <param name="response">Its answer, with the front map.</param>
    /// <param name="moment">The moment, with pressures.</param>
    /// <exception cref="ArgumentException">When there is no front map or the moment has no pressures.</exception>
    public static Picture Draw(InfusionPlan plan, PredictFillResponse response, FillMoment moment)
    {
        var answer = PanelAnswer.Of(plan, response);
        Require.Pressure(moment);
        var isEnd = answer.IsEnd(moment);
        var page = PanelPage.For(answer.Cloth, Sentence(answer.Plan, moment), MostHeight);
        var scene = new PressureScene(answer, moment, page.View);
        var signs = PanelKey.Signs(answer.Plan, isEnd && scene.HasDrySpots, isEnd && scene.HasNeverReached, false)
            .Where(sign => sign != KeySign.TimingMark).Concat(isEnd ? [] : [KeySign.Front, KeySign.Dry]).ToArray();
        var scale = new ClassScale(
            "mbar absolute", scene.Colours, [.. scene.LevelsMbar.Select(level => $"{level:0}")], $"{scene.LowMbar:0}", $"{scene.HighMbar:0}");
        var side = answer.HasSides ? $" on the {answer.Side}" : "";
        return page.Finish($"{answer.Plan.Title}: resin pressure{side} at {Amounts.Time(moment.TimeS)}", null, scene.Draw, new PictureKey(signs, scale));
    }

    private static string Sentence(InfusionPlan plan, FillMoment moment)
    {
        var (low, high) = (plan.Bag.PressureMbarAbs, (double)moment.PressureMbarAbs.Max());
        return $"{Amounts.Percent(moment.FilledFraction)} of the cloth is wet; the pressure falls from {high:0} mbar absolute at the feed to {low:0} mbar at the front.";
    }
}

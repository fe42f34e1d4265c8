using InfusionSim.Plots.Keys;
using InfusionSim.Plots.Lags;
using InfusionSim.Plots.Panels;
using InfusionSim.Plots.Words;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;

namespace InfusionSim.Plots;

/// <summary>The picture of the lag: how long the tool side of each place is wet after its bag side, and where that is longest.</summary>
/// <remarks>Where the mesh lies on the tool side, the bag side is behind; the picture then shows that.</remarks>
public static class LagMap
{
    /// <summary>Draws the lag.</summary>
    /// <param name="plan">The plan that was asked about.</param>
    /// <param name="response">Its answer, with the front map.</param>
    /// <exception cref="ArgumentException">When the answer has no front map, or the panel no tool side of its own.</exception>
    public static Picture Draw(InfusionPlan plan, PredictFillResponse response)
    {
        var (scene, page, lag) = Prepare(plan, response);
        var signs = PanelKey.Signs(Require.Plan(plan), scene.HasDrySpots, scene.HasNeverReached, false)
            .Where(sign => sign != KeySign.TimingMark).Concat(lag.At is null ? [] : [KeySign.LargestLag]).ToArray();
        var title = $"{Require.Plan(plan).Title}: how far the {(lag.IsToolSide ? "tool" : "bag")} side is behind";
        return page.Finish(title, null, scene.Draw, new PictureKey(signs, scene.Key));
    }

    /// <summary>The panel of the picture, with its labels placed.</summary>
    internal static (LagScene Scene, PanelPage Page, SideLag Lag) Prepare(InfusionPlan plan, PredictFillResponse response)
    {
        var bag = PanelAnswer.Of(plan, response);
        var tool = PanelAnswer.Of(plan, response, PanelFace.ToolSide);
        var lag = SideLag.Between(bag, tool);
        var page = PanelPage.For(bag.Cloth, Sentence(bag, lag));
        return (new LagScene(bag, tool, lag, page.View), page, lag);
    }

    private static string Sentence(PanelAnswer bag, SideLag lag)
    {
        var said = lag.IsToolSide ? ForecastText.ToolSide(bag.Plan, bag.Forecast).FirstOrDefault() : null;
        said ??= lag.At is null ? "both sides keep up with each other"
            : $"the {(lag.IsToolSide ? "tool" : "bag")} side is up to {Amounts.Time(lag.LargestS)} behind the {(lag.IsToolSide ? "bag" : "tool")} side";
        var text = char.ToUpperInvariant(said[0]) + said[1..];
        return lag.At is { } at
            ? $"{text}. Longest behind: {PlaceWords.Of(new Point { XMm = at.XMm, YMm = at.YMm }, bag.Plan)}."
            : $"{text}.";
    }
}

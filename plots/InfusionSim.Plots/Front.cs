using InfusionSim.Plots.Fronts;
using InfusionSim.Plots.Keys;
using InfusionSim.Plots.Panels;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Plots;

/// <summary>The picture of the front: when the resin reaches each place, where it comes last, where it never comes.</summary>
public static class Front
{
    /// <summary>Draws the front on the bag side.</summary>
    /// <param name="plan">The plan that was asked about.</param>
    /// <param name="response">Its answer, with the front map.</param>
    /// <exception cref="ArgumentException">When the answer has no front map.</exception>
    public static Picture Draw(InfusionPlan plan, PredictFillResponse response) => Draw(plan, response, PanelFace.BagSide);

    /// <summary>Draws the front on one side, the tool side as seen through the panel from the bag side.</summary>
    /// <param name="plan">The plan that was asked about.</param>
    /// <param name="response">Its answer, with the front map.</param>
    /// <param name="face">Which side.</param>
    /// <exception cref="ArgumentException">When the answer has no front map, or the panel no tool side of its own.</exception>
    public static Picture Draw(InfusionPlan plan, PredictFillResponse response, PanelFace face)
    {
        var answer = PanelAnswer.Of(plan, response, face);
        var (scene, page) = Prepare(answer);
        var signs = PanelKey.Signs(answer.Plan, scene.DrySpots.Count > 0, scene.NeverReached.Count > 0, scene.Last is not null);
        var key = new PictureKey(signs, new TimeScale(answer.Forecast.EndTimeS).Key(answer.Side));
        return page.Finish(answer.Title, Badge.Of(answer.Plan, answer.Forecast), scene.Draw, key);
    }

    /// <summary>The panel of the picture, with its labels placed.</summary>
    internal static (FrontScene Scene, PanelView View) Prepare(InfusionPlan plan, PredictFillResponse response, PanelFace face = PanelFace.BagSide)
    {
        var (scene, page) = Prepare(PanelAnswer.Of(plan, response, face));
        return (scene, page.View);
    }

    private static (FrontScene Scene, PanelPage Page) Prepare(PanelAnswer answer)
    {
        var seen = answer.Face == PanelFace.ToolSide ? " Seen through the panel from the bag side: left stays left." : "";
        var page = PanelPage.For(answer.Cloth, answer.Sentence + seen);
        return (new FrontScene(answer, page.View, new TimeScale(answer.Forecast.EndTimeS)), page);
    }
}

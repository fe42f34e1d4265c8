using InfusionSim.Plots.Fronts;
using InfusionSim.Plots.Keys;
using InfusionSim.Plots.Panels;
using InfusionSim.Plots.Styling;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;

namespace InfusionSim.Plots;

/// <summary>The front on bag side and tool side of one panel next to each other, on one scale of times.</summary>
public static class BothSides
{
    /// <summary>Draws both sides.</summary>
    /// <param name="plan">The plan that was asked about.</param>
    /// <param name="response">Its answer, with the front map.</param>
    /// <exception cref="ArgumentException">When the answer has no front map, or the panel no tool side of its own.</exception>
    public static Picture Draw(InfusionPlan plan, PredictFillResponse response)
    {
        var (row, scale, bag) = Prepare(plan, response);
        var key = new PictureKey(row.Signs, scale.Key());
        var keyTop = row.Bottom + 14;
        return new Picture(Theme.PictureWidth, key.PictureHeight(keyTop), $"{bag.Plan.Title}, both sides: {bag.Sentence}", canvas =>
        {
            Header.Draw(canvas, bag.Plan.Title, Badge.Of(bag.Plan, bag.Forecast), bag.Sentence, Theme.Margin, Theme.PictureWidth - 2 * Theme.Margin);
            row.Draw(canvas);
            key.Draw(canvas, keyTop);
        });
    }

    /// <summary>The two fronts, with their labels placed.</summary>
    internal static (FrontRow Row, TimeScale Scale, PanelAnswer Bag) Prepare(InfusionPlan plan, PredictFillResponse response)
    {
        var bag = PanelAnswer.Of(plan, response);
        var tool = PanelAnswer.Of(plan, response, PanelFace.ToolSide);
        var scale = new TimeScale(bag.Forecast.EndTimeS);
        var top = Header.Height(bag.Sentence, Theme.PictureWidth - 2 * Theme.Margin);
        var row = new FrontRow(
            [new FrontCell(bag, "Bag side", null, $"{Last(bag)}."), new FrontCell(tool, "Tool side", null, $"{Last(tool)}. Seen through the panel: left stays left.")],
            scale, top);
        return (row, scale, bag);
    }

    private static string Last(PanelAnswer side) => side.Last() is { } last && side.Forecast.Outcome != Outcome.GelsFirst
        ? $"The front comes to its last place at {Amounts.Time(last.TimeS)}" : "The resin gels before the front is through";
}

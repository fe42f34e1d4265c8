using InfusionSim.Plots.Contours;
using InfusionSim.Plots.Lags;
using InfusionSim.Plots.Panels;
using InfusionSim.Plots.Styling;
using InfusionSim.Plots.Tests.Samples;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Plots.Tests.Lags;

public class SideLagTests
{
    [Fact]
    public void Between_LayUp_IsTheTimeThatTheToolSideIsWetLater()
    {
        var (plan, response) = SamplePanels.LayUp();
        var bag = PanelAnswer.Of(plan, response);

        var lag = SideLag.Between(bag, PanelAnswer.Of(plan, response, PanelFace.ToolSide));

        lag.IsToolSide.ShouldBeTrue();
        // 0.4 s/mm · 447.5 mm in the last square before 450 mm.
        lag.LargestS.ShouldBe(0.4 * 447.5, 0.1);
        lag.At.ShouldNotBeNull().XMm.ShouldBe(447.5, 1e-9);
        lag.BehindS[bag.Map.SquareAt(new Spot(202, 200))].ShouldBe(0.4 * 202.5, 0.1, "float times of some 100 s");
    }

    [Fact]
    public void Between_SidesChanged_SaysThatTheBagSideIsBehind()
    {
        var (plan, response) = Changed();

        var lag = SideLag.Between(PanelAnswer.Of(plan, response), PanelAnswer.Of(plan, response, PanelFace.ToolSide));

        lag.IsToolSide.ShouldBeFalse();
        lag.LargestS.ShouldBe(0.4 * 447.5, 0.1);
        LagMap.Draw(plan, response).Sentence.ShouldContain("the bag side is up to 3 min behind the tool side", Case.Insensitive);
    }

    [Fact]
    public void Lines_LayUp_LieWhereTheLagHasTheirTime()
    {
        var (plan, response) = SamplePanels.LayUp();

        var (scene, page, _) = LagMap.Prepare(plan, response);

        // 0.4 s/mm: one minute behind at x = 150 mm, and again at 450 + (180 − 60)/0.9 = 583 mm.
        var labels = scene.Sheet.Labels.Where(label => label.Text == "1 min").ToArray();
        labels.Length.ShouldBe(2);
        labels.Select(label => page.View.ToSpot(label.Box.Centre).XMm).Order().First().ShouldBe(150, 5);
        labels.Select(label => page.View.ToSpot(label.Box.Centre).XMm).Order().Last().ShouldBe(583.3, 5);
    }

    [Fact]
    public void Picture_LayUp_MarksTheLongestLag()
    {
        var (plan, response) = SamplePanels.LayUp();

        var (scene, page, lag) = LagMap.Prepare(plan, response);
        using var bitmap = LagMap.Draw(plan, response).Render(1);

        scene.Sheet.Labels.ShouldContain(label => label.Text == "longest behind, 3 min" && label.Strong);
        var at = page.View.ToPixel(lag.At!.Value);
        Enumerable.Range(-12, 3).ShouldAllBe(
            dx => Enumerable.Range(-1, 3).Min(dy => bitmap.GetPixel((int)at.X + dx, (int)at.Y + dy).Red) < 60, "a tick to the left of the ring");
    }

    [Fact]
    public void Picture_ToolSideThatKeepsUp_HasNoLines()
    {
        var (plan, response) = SamplePanels.LayUp();
        response.FrontMap.ToolSide.ArrivalTimeS.Clear();
        response.FrontMap.ToolSide.ArrivalTimeS.Add(response.FrontMap.ArrivalTimeS);
        response.Forecast.Lag = new Lag();

        var (scene, _, lag) = LagMap.Prepare(plan, response);

        lag.At.ShouldBeNull();
        scene.Key.Borders.ShouldBeEmpty();
        LagMap.Draw(plan, response).Sentence.ShouldContain("keeps up");
    }

    [Theory]
    [InlineData(3)]
    [InlineData(10)]
    public void Colours_LevelToFarBehind_GetDarkerStepByStep(int count)
    {
        double[] greys = [.. Enumerable.Range(0, count).Select(i => LagColours.Of(i, count)).Select(colour => 0.299 * colour.Red + 0.587 * colour.Green + 0.114 * colour.Blue)];

        greys.Zip(greys.Skip(1)).ShouldAllBe(pair => pair.First - pair.Second > 6, "a grey print keeps the order");
    }

    private static (InfusionPlan Plan, PredictFillResponse Response) Changed()
    {
        var (plan, response) = SamplePanels.LayUp();
        var map = response.FrontMap;
        float[] bag = [.. map.ArrivalTimeS], tool = [.. map.ToolSide.ArrivalTimeS];
        map.ArrivalTimeS.Clear();
        map.ArrivalTimeS.Add(tool);
        map.ToolSide.ArrivalTimeS.Clear();
        map.ToolSide.ArrivalTimeS.Add(bag);
        response.Forecast.Lag = new Lag();
        return (plan, response);
    }
}

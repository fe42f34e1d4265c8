using InfusionSim.Plots.Contours;
using InfusionSim.Plots.Tests.Samples;
using InfusionSim.Protocol.V1;
using SkiaSharp;

namespace InfusionSim.Plots.Tests;

public class SidesTests
{
    [Theory]
    [InlineData(PanelFace.BagSide, "M1  6.8 min")]
    [InlineData(PanelFace.ToolSide, "M1  9.5 min")]
    public void TimingMark_EitherSide_SaysWhenTheFrontPassesThere(PanelFace face, string expected)
    {
        // 920 s · (400/600)² = 409 s on the bag side; 0.4 s/mm · 400 mm = 160 s later on the tool side.
        var (plan, response) = SamplePanels.LayUp();

        var (scene, _) = Front.Prepare(plan, response, face);

        scene.Sheet.Labels.ShouldContain(label => label.Text == expected);
    }

    [Theory]
    [InlineData(PanelFace.BagSide, "last on the bag side: the right edge, 15 min")]
    [InlineData(PanelFace.ToolSide, "last on the tool side: the right edge, 16 min")]
    public void Last_EitherSide_NamesItsOwnTime(PanelFace face, string expected)
    {
        var (plan, response) = SamplePanels.LayUp();

        var (scene, _) = Front.Prepare(plan, response, face);

        scene.Sheet.Labels.ShouldContain(label => label.Text == expected);
    }

    [Fact]
    public void Picture_OfTheToolSide_SaysFromWhereItIsSeen()
    {
        var (plan, response) = SamplePanels.LayUp();

        var sentence = Front.Draw(plan, response, PanelFace.ToolSide).Sentence;

        sentence.ShouldStartWith("Sled deck, with all that lies on it, tool side");
        sentence.ShouldContain("left stays left");
        sentence.ShouldContain("behind the bag side");
    }

    [Fact]
    public void BothSides_LayUp_HaveOneScaleAndTheirOwnFronts()
    {
        var (plan, response) = SamplePanels.LayUp();

        var (row, scale, _) = BothSides.Prepare(plan, response);
        var scenes = row.Scenes.ToArray();

        scale.EndS.ShouldBe(response.Forecast.EndTimeS);
        scenes.Length.ShouldBe(2);
        scenes[0].Sheet.Labels.ShouldContain(label => label.Text.StartsWith("last on the bag side", StringComparison.Ordinal));
        scenes[1].Sheet.Labels.ShouldContain(label => label.Text.StartsWith("last on the tool side", StringComparison.Ordinal));
    }

    [Fact]
    public void Draw_PanelOfOneLayer_SaysThatItsSidesFillTogether()
    {
        var (plan, response) = SamplePanels.Strip();
        Action[] pictures = [() => Front.Draw(plan, response, PanelFace.ToolSide), () => BothSides.Draw(plan, response), () => LagMap.Draw(plan, response)];

        pictures.ShouldAllBe(picture => Should.Throw<ArgumentException>(picture, "").Message.Contains("fill together"));
    }

    [Fact]
    public void Mesh_Inside_LeavesTheColoursPlain()
    {
        var (plan, response) = SamplePanels.LayUp();
        plan.Preform.Zones[0].Permeability.AngleDeg = 0;
        var (_, view) = Front.Prepare(plan, response);
        using var bitmap = Front.Draw(plan, response).Render(1);
        var inside = view.ToPixel(new Spot(75, 50));

        Enumerable.Range(-6, 13).Select(dx => bitmap.GetPixel((int)inside.X + dx, (int)inside.Y)).Distinct().Count().ShouldBe(1);
    }

    [Fact]
    public void Mesh_Border_IsNetted()
    {
        var (plan, response) = SamplePanels.LayUp();
        var (_, view) = Front.Prepare(plan, response);
        using var bitmap = Front.Draw(plan, response).Render(1);
        var border = view.ToPixel(new Spot(450, 150));

        var column = Enumerable.Range(-20, 41).Select(dy => bitmap.GetPixel((int)border.X - 4, (int)border.Y + dy)).ToArray();

        column.Count(IsDark).ShouldBeGreaterThan(3, "strands of the net");
        column.Count(pixel => !IsDark(pixel)).ShouldBeGreaterThan(10, "open between them");
    }

    private static bool IsDark(SKColor pixel) => pixel.Red < 120;
}

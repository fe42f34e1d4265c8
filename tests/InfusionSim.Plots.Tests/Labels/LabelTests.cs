using InfusionSim.Plots.Contours;
using InfusionSim.Plots.Labels;
using InfusionSim.Plots.Tests.Samples;
using SkiaSharp;

namespace InfusionSim.Plots.Tests.Labels;

public class LabelTests
{
    public static TheoryData<int> Samples => new(Enumerable.Range(0, SamplePanels.All().Count));

    [Theory]
    [MemberData(nameof(Samples))]
    public void Labels_AnyPanel_NeverOverlap(int sample)
    {
        var labels = Sheet(sample).Labels;

        for (var i = 0; i < labels.Count; i++)
        {
            for (var j = i + 1; j < labels.Count; j++)
            {
                labels[i].Box.Overlaps(labels[j].Box).ShouldBeFalse($"'{labels[i].Text}' covers '{labels[j].Text}'");
            }
        }
    }

    [Fact]
    public void Signs_LayUp_CoverNoLabelAndNoOtherSign()
    {
        var (plan, response) = SamplePanels.LayUp();
        var scene = Front.Prepare(plan, response).Scene;
        LabelBox[] signs = [.. scene.Signs.Boxes];

        signs.Length.ShouldBeGreaterThan(3, "strokes and the arrow");
        for (var i = 0; i < signs.Length; i++)
        {
            signs.Skip(i + 1).ShouldAllBe(other => !other.Overlaps(signs[i]));
            scene.Sheet.Labels.ShouldAllBe(label => !label.Box.Overlaps(signs[i]), "a label covers a sign");
        }

        scene.Sheet.Labels.ShouldContain(label => label.Text == "uphill, 12°");
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void Labels_AnyPanel_StayInsideThePanelsBox(int sample)
    {
        var (plan, response) = SamplePanels.All()[sample];
        var (scene, view) = Front.Prepare(plan, response);

        scene.Sheet.Labels.SelectMany(label => label.Box.Corners()).ShouldAllBe(corner => view.Area.Contains(corner));
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void Labels_OfIsochrones_LieOnTheirLine(int sample)
    {
        var (plan, response) = SamplePanels.All()[sample];
        var (scene, view) = Front.Prepare(plan, response);
        var map = new ArrivalMap(response.FrontMap, new ClothArea(plan));
        var lines = RoundTimes.Before(response.Forecast.EndTimeS).ToDictionary(Words.TimeTextTests.Text, time => map.At(time).Lines.SelectMany(view.ToPixels).ToArray());

        var onLines = scene.Sheet.Labels.Where(label => lines.ContainsKey(label.Text)).ToArray();

        onLines.ShouldNotBeEmpty();
        onLines.ShouldAllBe(label => lines[label.Text].Min(point => SKPoint.Distance(point, label.Box.Centre)) < 2.5);
    }

    [Fact]
    public void Labels_Strip_NameEveryRoundTimeAndTheLastPlace()
    {
        var texts = Sheet(0).Labels.Select(label => label.Text).ToArray();

        texts.ShouldBe(["last: the right edge, 30 min", "feed F1", "vent V1", "M1  7.5 min", "5 min", "10 min", "15 min", "20 min", "25 min"], ignoreOrder: true);
    }

    [Theory]
    [InlineData(0, 0, 0, true)]
    [InlineData(19, 0, 0, true)]
    [InlineData(21, 0, 0, false)]
    [InlineData(0, 11, 0, false)]
    // Turned by 45° a box of 20 × 10 reaches (10 + 5)/√2 = 10.6 along x: 10 + 10.6 is the limit.
    [InlineData(20, 0, 45, true)]
    [InlineData(21, 0, 45, false)]
    public void Overlaps_BoxOf20By10_AtADistance(float x, float y, float degrees, bool expected)
    {
        var here = new LabelBox(new SKPoint(0, 0), 10, 5);
        var there = new LabelBox(new SKPoint(x, y), 10, 5, degrees * MathF.PI / 180);

        here.Overlaps(there).ShouldBe(expected);
        there.Overlaps(here).ShouldBe(expected);
    }

    private static LabelSheet Sheet(int sample)
    {
        var (plan, response) = SamplePanels.All()[sample];
        return Front.Prepare(plan, response).Scene.Sheet;
    }
}

using InfusionSim.Plots.Contours;
using InfusionSim.Plots.Panels;
using InfusionSim.Plots.Qualities;
using InfusionSim.Plots.Styling;
using InfusionSim.Plots.Tests.Samples;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Plots.Tests.Qualities;

public class QualityTests
{
    [Fact]
    public void Lines_OfASpeedThatFallsWithTheDistance_LieWhereItHasTheirNumber()
    {
        var (plan, response) = Strip();
        var answer = PanelAnswer.Of(plan, response);
        var page = PanelPage.For(answer.Cloth, "speed");
        var field = new QualityField([.. response.FrontMap.FrontSpeedMmPerMin.Select(static value => (double)value)], [20, 50], true, static level => $"{level}", SpeedColours.Of);

        var scene = new QualityScene(answer, field, page.View);

        // v = 6000/x mm/min: 20 at 300 mm, 50 at 120 mm.
        scene.Sheet.Labels.Where(label => label.Text == "20").ShouldAllBe(label => Math.Abs(page.View.ToSpot(label.Box.Centre).XMm - 300) < 6);
        scene.Sheet.Labels.Where(label => label.Text == "50").ShouldAllBe(label => Math.Abs(page.View.ToSpot(label.Box.Centre).XMm - 120) < 6);
        scene.Sheet.Labels.ShouldContain(static label => label.Text == "20");
    }

    [Fact]
    public void Picture_OfEach_SaysItsNumbersInWords()
    {
        var (plan, response) = Strip();

        Quality.DrawSpeed(plan, response).Sentence.ShouldContain("10 to 150 mm/min");
        Quality.DrawCapillaryNumber(plan, response).Sentence.ShouldContain("doubtful");
        Quality.DrawGelMargin(plan, response).Sentence.ShouldContain("44 % of the flow that the resin has up to gel is left");
    }

    [Fact]
    public void Picture_WithoutQualityNumbers_IsRefused()
    {
        var (plan, response) = SamplePanels.Strip();

        Should.Throw<ArgumentException>(() => Quality.DrawSpeed(plan, response)).Message.ShouldContain("with_quality_maps");
    }

    [Fact]
    public void Picture_OfCapillaryNumbersWithoutASurfaceTension_IsRefused()
    {
        var (plan, response) = Strip();
        response.FrontMap.CapillaryNumberRatio.Clear();

        Should.Throw<ArgumentException>(() => Quality.DrawCapillaryNumber(plan, response)).Message.ShouldContain("resin.surfaceTensionMnPerM");
    }

    [Theory]
    [InlineData(8, 240, new[] { 10.0, 20, 50, 100, 200 })]
    [InlineData(1.1e-3, 4.2e-3, new[] { 1.5e-3, 2e-3, 3e-3, 4e-3 })]
    [InlineData(5, 5, new double[0])]
    [InlineData(0, 5, new double[0])]
    public void RoundNumbers_OverPowersOfTen_AreOneTwoFiveOrCloser(double low, double high, double[] expected) => RoundNumbers.Between(low, high).ShouldBe(expected);

    [Theory]
    [InlineData(3)]
    [InlineData(9)]
    public void Colours_OfEachPicture_GetDarkerStepByStep(int count)
    {
        Greys(SpeedColours.Of).ShouldAllBe(static step => step > 6);
        Greys(CapillaryColours.Of).ShouldAllBe(static step => step > 6);
        Greys(GelMarginColours.Of).ShouldAllBe(static step => step < -6);

        IEnumerable<double> Greys(Func<int, int, SkiaSharp.SKColor> colourOf)
        {
            double[] greys = [.. Enumerable.Range(0, count).Select(i => colourOf(i, count)).Select(colour => 0.299 * colour.Red + 0.587 * colour.Green + 0.114 * colour.Blue)];
            return greys.Zip(greys.Skip(1)).Select(static pair => pair.First - pair.Second);
        }
    }

    private static (InfusionPlan Plan, PredictFillResponse Response) Strip()
    {
        var (plan, response) = SamplePanels.Strip();
        var map = response.FrontMap;
        for (var square = 0; square < map.Squares.Length; square++)
        {
            var x = (square % map.Grid.Columns + 0.5) * map.Grid.CellMm;
            map.FrontSpeedMmPerMin.Add((float)(6000 / x));
            map.CapillaryNumberRatio.Add((float)(0.66 / x));
            map.GelMarginFraction.Add((float)(1 - 0.5556 * x * x / 360_000));
        }

        response.Forecast.Quality = new FillQuality
        {
            FrontSpeedFromMmPerMin = 10.4,
            FrontSpeedToMmPerMin = 150,
            CapillaryNumberFromRatio = 1.1e-3,
            CapillaryNumberToRatio = 0.016,
            PublishedFromRatio = 1e-3,
            PublishedToRatio = 1e-2,
            SmallestGelMarginFraction = 0.444,
            SmallestGelMarginAt = Drawing.At(597.5, 2.5),
        };
        return (plan, response);
    }
}

using InfusionSim.Plots.Contours;
using InfusionSim.Plots.Fronts;
using InfusionSim.Plots.Tests.Samples;
using SkiaSharp;

namespace InfusionSim.Plots.Tests;

public class FrontTests
{
    [Fact]
    public void DrySpot_Deck_IsHatchedBlackOnWhite()
    {
        var (plan, response) = SamplePanels.HoleAndDrySpot();
        var (_, view) = Front.Prepare(plan, response);
        using var bitmap = Front.Draw(plan, response).Render(1);
        var middle = view.ToPixel(new Spot(1000, 240));

        var row = Enumerable.Range(-12, 25).Select(dx => Grey(bitmap.GetPixel((int)middle.X + dx, (int)middle.Y))).ToArray();

        row.Count(grey => grey < 80).ShouldBeGreaterThan(3, "strokes");
        row.Count(grey => grey > 220).ShouldBeGreaterThan(6, "white between them");
    }

    [Fact]
    public void WetCloth_Deck_IsPlain()
    {
        var (plan, response) = SamplePanels.HoleAndDrySpot();
        var (_, view) = Front.Prepare(plan, response);
        using var bitmap = Front.Draw(plan, response).Render(1);
        var middle = view.ToPixel(new Spot(250, 400));

        Enumerable.Range(-12, 25).Select(dx => bitmap.GetPixel((int)middle.X + dx, (int)middle.Y)).Distinct().Count().ShouldBe(1);
    }

    [Fact]
    public void Mask_PlateTurnedWithCutEdgeSquares_PaintsNoTimeOutsideTheOutline()
    {
        var (plan, response) = SamplePanels.Turned();
        var cloth = new ClothArea(plan);
        var (_, view) = Front.Prepare(plan, response);
        var colours = new TimeScale(response.Forecast.EndTimeS).Colours.ToHashSet();
        using var bitmap = Front.Draw(plan, response).Render(1);

        var (inside, outside) = (0, 0);
        for (var y = (int)view.Area.Top; y < view.Area.Bottom; y++)
        {
            for (var x = (int)view.Area.Left; x < view.Area.Right; x++)
            {
                if (colours.Contains(bitmap.GetPixel(x, y)))
                {
                    var isOnCloth = cloth.Contains(view.ToSpot(new SKPoint(x + 0.5f, y + 0.5f)));
                    inside += isOnCloth ? 1 : 0;
                    outside += isOnCloth ? 0 : 1;
                }
            }
        }

        outside.ShouldBe(0);
        inside.ShouldBeGreaterThan(50_000, "the cloth itself is painted");
    }

    [Fact]
    public void NeverReached_PlateThatGelsFirst_IsHatchedOtherThanADrySpot()
    {
        var (plan, response) = SamplePanels.Turned();
        var (_, view) = Front.Prepare(plan, response);
        using var bitmap = Front.Draw(plan, response).Render(1);
        var middle = view.ToPixel(new Spot(560, 350));

        var row = Enumerable.Range(-20, 41).Select(dx => Grey(bitmap.GetPixel((int)middle.X + dx, (int)middle.Y))).ToArray();

        row.Max().ShouldBeGreaterThan(225);
        row.Min().ShouldBeInRange(90, 210, "thin grey strokes");
    }

    [Fact]
    public void Colours_EarlyToLate_GetDarkerByEvenSteps()
    {
        var greys = new TimeScale(1800).Colours.Select(Grey).ToArray();

        greys.Zip(greys.Skip(1)).ShouldAllBe(pair => pair.First - pair.Second > 12);
    }

    [Fact]
    public void Last_AnyPanel_StandsAtThePlaceOfTheForecast()
    {
        foreach (var (plan, response) in SamplePanels.All())
        {
            var (scene, view) = Front.Prepare(plan, response);

            scene.Last.ShouldNotBeNull().ShouldBe(view.ToPixel(ClothArea.Read(response.Forecast.LastToFill)));
            scene.Sheet.Labels.ShouldContain(label => label.Strong && label.Text.StartsWith("last", StringComparison.Ordinal));
        }
    }

    private static double Grey(SKColor colour) => 0.299 * colour.Red + 0.587 * colour.Green + 0.114 * colour.Blue;
}

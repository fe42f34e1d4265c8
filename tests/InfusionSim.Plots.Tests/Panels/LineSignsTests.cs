using InfusionSim.Plots.Keys;
using InfusionSim.Plots.Panels;
using InfusionSim.Plots.Tests.Samples;
using SkiaSharp;

namespace InfusionSim.Plots.Tests.Panels;

public class LineSignsTests
{
    private static readonly SKPoint Middle = new(30.5f, 30.5f);

    [Theory]
    [InlineData(9)]
    [InlineData(14)]
    [InlineData(30)]
    public void Membrane_Fitting_IsARingCrossedByBarsThatStickOut(float width)
    {
        using var bitmap = Draw(canvas => LineSigns.Vent(canvas, [Middle], width, true));

        Grey(bitmap, 0, 0).ShouldBeGreaterThan(150, "no dot in the middle");
        foreach (var side in new[] { -1, 1 })
        {
            var bar = (int)MathF.Round(side * width * 0.18f);
            Darkest(bitmap, bar, 0).ShouldBeLessThan(150, "a bar through the ring");
            Darkest(bitmap, bar, (int)(width / 2 + 1)).ShouldBeLessThan(150, "beyond its edge");
        }
    }

    [Fact]
    public void LastPlace_AnySize_HasADotWhereAMembraneHasNone()
    {
        using var bitmap = Draw(canvas => LineSigns.LastPlace(canvas, Middle, 0.65f));

        Grey(bitmap, 0, 0).ShouldBeLessThan(60);
    }

    [Fact]
    public void Key_MembraneFitting_ExplainsTheSignThatIsDrawn()
    {
        var (plan, _) = SamplePanels.Disc();

        PanelKey.Signs(plan, false, false, true).ShouldBe([KeySign.Feed, KeySign.MembraneFitting, KeySign.LastPlace]);
    }

    [Fact]
    public void Key_LayUpOfAPart_ExplainsItsDashedEdge()
    {
        var (plan, _) = SamplePanels.Disc();
        plan.Preform.Zones.Add(plan.Preform.Zones[0].Clone());
        plan.Preform.Zones[1].Area = plan.Preform.Outline;

        PanelKey.Signs(plan, false, false, true).ShouldContain(KeySign.LayUp);
    }

    private static SKBitmap Draw(Action<SKCanvas> draw)
    {
        var bitmap = new SKBitmap(61, 61);
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(new SKColor(0x2C, 0x7F, 0x93));
        draw(canvas);
        return bitmap;
    }

    private static int Darkest(SKBitmap bitmap, int dx, int dy) => Enumerable.Range(dx - 1, 3).Min(x => Grey(bitmap, x, dy));

    private static int Grey(SKBitmap bitmap, int dx, int dy)
    {
        var colour = bitmap.GetPixel(30 + dx, 30 + dy);
        return (colour.Red + colour.Green + colour.Blue) / 3;
    }
}

using InfusionSim.Plots.Styling;
using ScottPlot;
using ScottPlot.TickGenerators;
using SkiaSharp;

namespace InfusionSim.Plots.Panels;

/// <summary>Axes in millimetres around a panel, so that a place on the picture can be found with a tape measure.</summary>
internal static class PanelFrame
{
    /// <summary>Room for the axis on the left of a panel's area [px].</summary>
    internal const float LeftRoom = 44;

    /// <summary>Room for the axis below a panel's area [px].</summary>
    internal const float BottomRoom = 40;

    /// <summary>Draws the axes and, inside them, the panel.</summary>
    /// <param name="canvas">What to draw on.</param>
    /// <param name="view">Where the panel lies.</param>
    /// <param name="layer">Draws the panel.</param>
    internal static void Draw(SKCanvas canvas, PanelView view, Action<SKCanvas> layer)
    {
        using var plot = ChartStyle.NewPlot();
        var area = view.Area;
        var (low, high) = (view.ToSpot(new SKPoint(area.Left, area.Bottom)), view.ToSpot(new SKPoint(area.Right, area.Top)));
        plot.Axes.SetLimits(low.XMm, high.XMm, low.YMm, high.YMm);
        plot.HideGrid();
        plot.Axes.Left.TickGenerator = Millimetres();
        plot.Axes.Bottom.TickGenerator = Millimetres();
        plot.Axes.Right.IsVisible = plot.Axes.Top.IsVisible = false;
        plot.Layout.Fixed(new PixelPadding(LeftRoom, 0, BottomRoom, 0));
        ChartStyle.Render(plot, canvas, new PixelRect(area.Left - LeftRoom, area.Right, area.Bottom + BottomRoom, area.Top));
        layer(canvas);
        TextStyle.Axis.Draw(canvas, "mm", area.Right, area.Bottom + 32, Theme.Quiet, SKTextAlign.Right);
    }

    private static NumericAutomatic Millimetres() => new() { LabelFormatter = value => $"{value:0.###}", MinimumTickSpacing = 55, MinorTickGenerator = new EvenlySpacedMinorTickGenerator(1) };
}

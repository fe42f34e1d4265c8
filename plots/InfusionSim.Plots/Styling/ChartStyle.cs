using ScottPlot;
using SkiaSharp;

namespace InfusionSim.Plots.Styling;

/// <summary>Gives every chart the theme's letters and lines.</summary>
internal static class ChartStyle
{
    /// <summary>An empty chart in the theme, drawn over what the canvas already carries.</summary>
    internal static Plot NewPlot()
    {
        Fonts.UseOnAxes();
        var plot = new Plot();
        plot.RenderManager.ClearCanvasBeforeEachRender = false;
        plot.FigureBackground.Color = Colors.Transparent;
        plot.DataBackground.Color = Colors.Transparent;
        plot.Axes.FrameColor(ToColour(Theme.Quiet));
        plot.Axes.FrameWidth(1);
        foreach (var axis in plot.Axes.GetAxes())
        {
            axis.TickLabelStyle.FontName = Fonts.Family;
            axis.TickLabelStyle.FontSize = Theme.AxisSize;
            axis.TickLabelStyle.ForeColor = ToColour(Theme.Quiet);
            axis.MajorTickStyle.Color = axis.MinorTickStyle.Color = ToColour(Theme.Quiet);
            axis.MajorTickStyle.Length = 4;
            axis.MinorTickStyle.Length = 0;
        }

        return plot;
    }

    /// <summary>Draws a chart once.</summary>
    /// <remarks>A chart draws itself a second time when its first drawing has moved its axes; that first drawing goes where nobody sees it.</remarks>
    internal static void Render(Plot plot, SKCanvas canvas, PixelRect area)
    {
        using (var nowhere = new SKNoDrawCanvas((int)area.Right, (int)area.Bottom))
        {
            plot.Render(nowhere, area);
        }

        plot.Render(canvas, area);
    }

    /// <summary>A colour of the theme as charts spell it.</summary>
    internal static Color ToColour(SKColor colour) => new(colour.Red, colour.Green, colour.Blue, colour.Alpha);
}

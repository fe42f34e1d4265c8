using InfusionSim.Plots.Styling;
using ScottPlot;
using SkiaSharp;

namespace InfusionSim.Plots.Charts;

/// <summary>Axes of a chart of shares in per cent.</summary>
internal static class ChartAxes
{
    /// <summary>Room for the axis on the left [px].</summary>
    internal const float LeftRoom = 58;

    /// <summary>Room for the axis below [px].</summary>
    internal const float BottomRoom = 56;

    /// <summary>Draws the axes.</summary>
    /// <param name="canvas">What to draw on.</param>
    /// <param name="area">Where the curves go [px].</param>
    /// <param name="ways">Left and right end of the axis below, in its unit.</param>
    /// <param name="shares">Lowest and highest share [-].</param>
    /// <param name="across">What the axis below counts.</param>
    /// <param name="up">What the axis on the left counts.</param>
    internal static void Draw(SKCanvas canvas, SKRect area, (double Least, double Most) ways, (double Low, double High) shares, string across, string up)
    {
        using var plot = ChartStyle.NewPlot();
        plot.Axes.SetLimits(ways.Least, ways.Most, shares.Low * 100, shares.High * 100);
        plot.Axes.Right.IsVisible = plot.Axes.Top.IsVisible = false;
        plot.Grid.MajorLineColor = ChartStyle.ToColour(Theme.Faint.WithAlpha(110));
        plot.Axes.Bottom.TickGenerator = new ScottPlot.TickGenerators.NumericAutomatic { MinimumTickSpacing = 55, LabelFormatter = value => $"{value:0.###}" };
        var step = shares.Low < 0.45 ? 20 : shares.Low < 0.75 ? 10 : 5;
        double[] ticks = [.. Enumerable.Range(0, 21).Select(i => (double)step * i).Where(tick => tick >= shares.Low * 100 - 1e-9 && tick <= 100)];
        plot.Axes.Left.SetTicks(ticks, [.. ticks.Select(tick => $"{tick:0}")]);
        plot.Layout.Fixed(new PixelPadding(LeftRoom, 0, BottomRoom, 0));
        ChartStyle.Render(plot, canvas, new PixelRect(area.Left - LeftRoom, area.Right, area.Bottom + BottomRoom, area.Top));
        TextStyle.Label.Draw(canvas, across, area.MidX, area.Bottom + 40, Theme.Ink, SKTextAlign.Center);
        canvas.Save();
        canvas.Translate(area.Left - 46, area.MidY);
        canvas.RotateDegrees(-90);
        TextStyle.Label.Draw(canvas, up, 0, 0, Theme.Ink, SKTextAlign.Center);
        canvas.Restore();
    }
}

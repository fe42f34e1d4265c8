using InfusionSim.Plots.Styling;
using ScottPlot;
using SkiaSharp;

namespace InfusionSim.Plots.Charts;

/// <summary>The frame of a chart of curves against time: axes with ticks of its own choice, and where a value lies on it.</summary>
/// <param name="Area">Where the curves go [px].</param>
/// <param name="Scale">The axis of times.</param>
/// <param name="Low">Value at the lower edge, in the unit of the axis.</param>
/// <param name="High">Value at the upper edge, in the unit of the axis.</param>
internal sealed record CurveFrame(SKRect Area, ResinScale Scale, double Low, double High)
{
    /// <summary>Draws the axes.</summary>
    /// <param name="canvas">What to draw on.</param>
    /// <param name="ticks">Ticks of the axis on the left: value and what stands beside it.</param>
    /// <param name="up">What the axis on the left counts.</param>
    internal void DrawAxes(SKCanvas canvas, IReadOnlyList<(double Value, string Text)> ticks, string up)
    {
        using var plot = ChartStyle.NewPlot();
        plot.Axes.SetLimits(0, Scale.EndS / Scale.UnitS, Low, High);
        plot.Axes.Right.IsVisible = plot.Axes.Top.IsVisible = false;
        plot.Grid.MajorLineColor = ChartStyle.ToColour(Theme.Faint.WithAlpha(110));
        plot.Axes.Bottom.TickGenerator = new ScottPlot.TickGenerators.NumericAutomatic { MinimumTickSpacing = 55, LabelFormatter = value => $"{value:0.###}" };
        plot.Axes.Left.SetTicks([.. ticks.Select(tick => tick.Value)], [.. ticks.Select(tick => tick.Text)]);
        plot.Layout.Fixed(new PixelPadding(ChartAxes.LeftRoom, 0, ChartAxes.BottomRoom, 0));
        ChartStyle.Render(plot, canvas, new PixelRect(Area.Left - ChartAxes.LeftRoom, Area.Right, Area.Bottom + ChartAxes.BottomRoom, Area.Top));
        TextStyle.Label.Draw(canvas, Scale.Caption, Area.MidX, Area.Bottom + 40, Theme.Ink, SKTextAlign.Center);
        canvas.Save();
        canvas.Translate(Area.Left - 46, Area.MidY);
        canvas.RotateDegrees(-90);
        TextStyle.Label.Draw(canvas, up, 0, 0, Theme.Ink, SKTextAlign.Center);
        canvas.Restore();
    }

    /// <summary>Where a value lies [px].</summary>
    /// <param name="timeS">Time [s].</param>
    /// <param name="value">Value in the unit of the axis.</param>
    internal SKPoint At(double timeS, double value) => new(
        (float)(Area.Left + Area.Width * timeS / Scale.EndS), (float)(Area.Bottom - Area.Height * (value - Low) / (High - Low)));

    /// <summary>A curve as far as the frame shows it, cut where it leaves the frame [px].</summary>
    /// <param name="points">Times [s] in order, and values in the unit of the axis.</param>
    internal SKPoint[] Curve(IReadOnlyList<(double TimeS, double Value)> points)
    {
        var shown = new List<SKPoint>();
        for (var i = 0; i < points.Count; i++)
        {
            var (time, value) = points[i];
            if (time > Scale.EndS || value > High)
            {
                if (i > 0)
                {
                    var (before, low) = points[i - 1];
                    var share = Math.Min(time > Scale.EndS ? (Scale.EndS - before) / (time - before) : 1, value > High ? (High - low) / (value - low) : 1);
                    shown.Add(At(before + share * (time - before), low + share * (value - low)));
                }

                break;
            }

            shown.Add(At(time, value));
        }

        return [.. shown];
    }
}

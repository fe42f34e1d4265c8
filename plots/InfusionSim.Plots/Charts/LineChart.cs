using InfusionSim.Plots.Labels;
using InfusionSim.Plots.Panels;
using InfusionSim.Plots.Styling;
using InfusionSim.Protocol.Words;
using SkiaSharp;

namespace InfusionSim.Plots.Charts;

/// <summary>The chart of the pressure along lines: each line named at its far end, with the mark below which an end counts as weak.</summary>
internal sealed class LineChart
{
    /// <summary>Share of its starting pressure below which the far end of a line is weak [-] (common practice).</summary>
    internal const double WeakBelow = 0.95;

    // Room before the first point, so that its sign does not cover the axis.
    private const double LeftShare = 0.03;

    private static readonly double[] MarkTextPlaces = [0.5, 0.25, 0.75, 0.1];

    private readonly IReadOnlyList<LineCurve> _curves;
    private readonly SKRect _area;
    private readonly double _lengthMm;
    private readonly double _lowest;
    private readonly double _highest;

    /// <summary>Prepares the chart and places its labels.</summary>
    /// <param name="curves">The lines; at least one.</param>
    /// <param name="area">Where the curves go [px].</param>
    internal LineChart(IReadOnlyList<LineCurve> curves, SKRect area)
    {
        (_curves, _area) = (curves, area);
        _lengthMm = Math.Max(1, 1.04 * curves.Max(curve => curve.DistancesMm[^1]));
        _lowest = Math.Clamp(Math.Floor(10 * (curves.Min(curve => curve.Shares.Min()) - 0.03)) / 10, 0, 0.8);
        _highest = 1 + 0.08 * (1 - _lowest);
        Sheet = PlaceLabels();
    }

    /// <summary>The labels with what they had to stay clear of.</summary>
    internal LabelSheet Sheet { get; }

    /// <summary>Draws the chart.</summary>
    internal void Draw(SKCanvas canvas)
    {
        ChartAxes.Draw(
            canvas, _area, (-LeftShare * _lengthMm, _lengthMm), (_lowest, _highest), "way along the line from its first point [mm]", "share of what the line has at its start [%]");
        using var weak = Theme.Stroke(Theme.Ink, 1.4f, 9, 5);
        canvas.DrawLine(At(-LeftShare * _lengthMm, WeakBelow), At(_lengthMm, WeakBelow), weak);
        foreach (var curve in _curves)
        {
            DrawCurve(canvas, curve);
        }

        LabelPainter.Draw(canvas, Sheet.Labels);
    }

    private void DrawCurve(SKCanvas canvas, LineCurve curve)
    {
        var line = Points(curve);
        using var casing = Theme.Stroke(Theme.Ink, 4.6f);
        using var body = Theme.Stroke(curve.IsVent ? Theme.Paper : Theme.Feed, 2.2f);
        CurvePainter.Line(canvas, line, casing);
        CurvePainter.Line(canvas, line, body);
        CurvePainter.Dot(canvas, line[curve.FarEnd], 5, Theme.Ink);
        if (curve.HasHose)
        {
            LayUpSigns.HoseJoint(canvas, Start(curve));
        }
    }

    private LabelSheet PlaceLabels()
    {
        var sheet = new LabelSheet(_area);
        sheet.Block([At(-LeftShare * _lengthMm, WeakBelow), At(_lengthMm, WeakBelow)], 4);
        foreach (var curve in _curves)
        {
            sheet.Block(Contours.LineThinner.Thin(Points(curve), 0.5f), 6);
            sheet.Block(new LabelBox(Points(curve)[curve.FarEnd], 7, 7));
            sheet.Block(new LabelBox(Start(curve), 12, 12));
        }

        SKPoint[] places = [.. MarkTextPlaces.Select(share => At(share * _lengthMm, WeakBelow))];
        CalloutPlacer.Put(sheet, "95 %: a feed that ends below it is weak there", places, 4, 60, leader: false);
        foreach (var curve in _curves)
        {
            CalloutPlacer.Put(sheet, $"{curve.Text}: {Amounts.Percent(curve.EndShare)} left at its far end", [Points(curve)[curve.FarEnd]], 12, 160, strong: true);
        }

        return sheet;
    }

    private SKPoint Start(LineCurve curve) => At(curve.StartMm, 1);

    private SKPoint[] Points(LineCurve curve) => [.. curve.DistancesMm.Select((distance, i) => At(distance, curve.Shares[i]))];

    private SKPoint At(double distanceMm, double share) => new(
        (float)(_area.Left + _area.Width * (distanceMm / _lengthMm + LeftShare) / (1 + LeftShare)), (float)(_area.Bottom - _area.Height * (share - _lowest) / (_highest - _lowest)));
}

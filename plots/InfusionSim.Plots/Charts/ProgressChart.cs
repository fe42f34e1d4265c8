using InfusionSim.Plots.Labels;
using InfusionSim.Plots.Panels;
using InfusionSim.Plots.Styling;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;
using SkiaSharp;

namespace InfusionSim.Plots.Charts;

/// <summary>The chart of a progress picture.</summary>
internal sealed class ProgressChart
{
    /// <summary>Room for the axis on the left [px].</summary>
    internal const float LeftRoom = ChartAxes.LeftRoom;

    /// <summary>Room for the axis below [px].</summary>
    internal const float BottomRoom = ChartAxes.BottomRoom;

    private const double HighestShare = 1.12;
    private const int Points = 240;

    // Beyond this many times the slow case a gel time would squeeze the curve into a corner.
    private const double MostGelMargin = 3;

    private static readonly double[] BandTextFactors = [1.25, 1.35, 1.15, 0.8];

    private readonly FillForecast _forecast;
    private readonly SKRect _area;
    private readonly ProgressBand _band;
    private readonly double _endS;
    private readonly bool _isGelShown;
    private readonly (double Seconds, string Name) _unit;

    /// <summary>Prepares the chart.</summary>
    internal ProgressChart(InfusionPlan plan, FillForecast forecast, IReadOnlyList<FillMoment> moments, SKRect area)
    {
        (_forecast, _area) = (forecast, area);
        var factor = plan.Preform.PermeabilityFactor;
        _band = ProgressBand.From(ProgressCurve.From(moments), forecast, factor);
        var slowestS = forecast.EndTimeS * factor;
        _isGelShown = forecast.GelTimeS < slowestS * MostGelMargin;
        _endS = !_isGelShown ? slowestS * 1.5 * 1.08 : forecast.GelTimeS * (slowestS > forecast.GelTimeS ? 1.25 : 1.08);
        _unit = _endS < 240 ? (1, "s") : _endS < 4 * 3600 ? (60, "min") : (3600, "h");
    }

    /// <summary>Draws the chart.</summary>
    internal void Draw(SKCanvas canvas)
    {
        ChartAxes.Draw(
            canvas, _area, (0, _endS / _unit.Seconds), (0, HighestShare), $"time after the first feed opens [{_unit.Name}]", "wet share of the cloth [%]");
        if (_isGelShown)
        {
            DrawGelled(canvas);
        }

        DrawBand(canvas);
        DrawCurves(canvas);
        var sheet = new LabelSheet(_area);
        DrawTimes(canvas, sheet);
        LabelPainter.Draw(canvas, sheet.Labels);
    }

    private SKPoint At(double timeS, double share) => new(
        (float)(_area.Left + _area.Width * timeS / _endS), (float)(_area.Bottom - _area.Height * share / HighestShare));

    private void DrawGelled(SKCanvas canvas)
    {
        using var builder = new SKPathBuilder();
        builder.AddRect(new SKRect(At(_forecast.GelTimeS, 0).X, _area.Top, _area.Right, _area.Bottom));
        using var area = builder.Detach();
        Hatching.Faint(canvas, area);
    }

    private void DrawBand(SKCanvas canvas)
    {
        var (fast, slow) = (Sample(_band.Fast, _band.FastEndsS), Sample(_band.Slow));

        // Past the end of a fast edge that is not known further, only the half below the middle is certain.
        SKPoint[] middle = double.IsFinite(_band.FastEndsS)
            ? [At(_band.FastEndsS, _band.Middle.At(_band.FastEndsS)), .. Sample(_band.Middle).Where(point => point.X > fast[^1].X)] : [];
        using var builder = new SKPathBuilder();
        builder.AddPoly([.. fast, .. middle, .. slow.Reverse()], true);
        using var area = builder.Detach();
        using var fill = Theme.Fill(Theme.Resin.WithAlpha(60));
        canvas.DrawPath(area, fill);
        using var edge = Theme.Stroke(Theme.Resin, 1.4f, 5, 4);
        CurvePainter.Line(canvas, fast, edge);
        CurvePainter.Line(canvas, slow, edge);
    }

    private void DrawCurves(SKCanvas canvas)
    {
        using var stroke = Theme.Stroke(Theme.Ink, 3);
        CurvePainter.Line(canvas, Sample(_band.Middle), stroke);
    }

    private void DrawTimes(SKCanvas canvas, LabelSheet sheet)
    {
        foreach (var line in new[] { Sample(_band.Fast, _band.FastEndsS), Sample(_band.Middle), Sample(_band.Slow) })
        {
            sheet.Block([.. line.Where((_, i) => i % 6 == 0)], 4);
        }

        DrawGelTime(canvas, sheet);
        var end = At(_band.Middle.TimesS[^1], _band.Middle.Shares[^1]);
        CurvePainter.Dot(canvas, end, 7, Theme.Ink);
        sheet.Block(new LabelBox(end, 9, 9));
        var endText = _forecast is { HasFillTimeS: true, Outcome: Outcome.Fills } ? $"full, {Amounts.Time(_forecast.FillTimeS)}" : $"{Amounts.Percent(_forecast.FilledFraction)} wet, {Amounts.Time(_forecast.EndTimeS)}";
        CalloutPlacer.Put(sheet, endText, [end], 14, 80, strong: true);
        foreach (var vent in _forecast.Vents.Where(vent => vent.HasArrivalTimeS))
        {
            var at = At(vent.ArrivalTimeS, _band.Middle.At(vent.ArrivalTimeS));
            CurvePainter.Dot(canvas, at, 5, Theme.Paper);
            sheet.Block(new LabelBox(at, 7, 7));
            CalloutPlacer.Put(sheet, $"vent {vent.Name}, {Amounts.Time(vent.ArrivalTimeS)}", [at], 16, 140);
        }

        PlaceBandText(sheet);
        if (double.IsFinite(_band.FastEndsS))
        {
            CalloutPlacer.Put(sheet, "the fast case goes on", [At(_band.FastEndsS, _band.Fast.Shares[^1])], 12, 80);
        }
    }

    private void DrawGelTime(SKCanvas canvas, LabelSheet sheet)
    {
        if (!_isGelShown)
        {
            CalloutPlacer.Put(
                sheet, $"gel later, at {Amounts.Time(_forecast.GelTimeS)}", [new SKPoint(_area.Right - 4, At(0, 0.5).Y)], 4, 60, strong: true, leader: false);
            return;
        }

        var gel = At(_forecast.GelTimeS, 0);
        using var line = Theme.Stroke(Theme.Ink, 2.4f, 9, 5);
        canvas.DrawLine(gel.X, _area.Bottom, gel.X, _area.Top, line);
        sheet.Block(LabelBox.Around(gel, new SKPoint(gel.X, _area.Top), 4));
        CalloutPlacer.Put(
            sheet, $"gel, {Amounts.Time(_forecast.GelTimeS)}", [At(_forecast.GelTimeS, 0.5), At(_forecast.GelTimeS, 0.3)], 6, 60, strong: true, leader: false);
    }

    private void PlaceBandText(LabelSheet sheet)
    {
        var middle = _band.Middle;
        var share = middle.Shares[^1] * 0.62;
        var at = middle.TimesS[Array.FindIndex(middle.Shares, value => value >= share)];
        SKPoint[] anchors = [.. BandTextFactors.Select(factor => At(at * factor, share))];
        CalloutPlacer.Put(sheet, "two shots in three", anchors, 20, 160);
    }

    // The end of the curve is a corner, which even steps would cut.
    private SKPoint[] Sample(ProgressCurve curve, double untilS = double.PositiveInfinity) =>
        [.. Enumerable.Range(0, Points + 1).Select(i => Math.Pow((double)i / Points, 2) * _endS)
            .Append(curve.TimesS[^1]).Order().Where(time => time <= Math.Min(untilS, _endS)).Select(time => At(time, curve.At(time)))];
}

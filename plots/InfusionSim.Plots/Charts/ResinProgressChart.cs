using InfusionSim.Plots.Contours;
using InfusionSim.Plots.Labels;
using InfusionSim.Plots.Styling;
using SkiaSharp;

namespace InfusionSim.Plots.Charts;

/// <summary>The chart of the wet share against time, a curve for each resin, with its end and its gel.</summary>
internal sealed class ResinProgressChart
{
    private const double HighestShare = 1.32;

    // More names than this would cover the curves; then numbers stand on them and the key names them.
    private const int MostNames = 6;

    // Least distance of a leader's end from another curve [px].
    private const float NearestOther = 14;

    private static readonly double[] NameShares = [0.8, 0.65, 0.5, 0.35];

    private readonly IReadOnlyList<ResinLine> _lines;
    private readonly CurveFrame _frame;

    /// <summary>Prepares the chart and places its labels.</summary>
    /// <param name="lines">The resins; at least one.</param>
    /// <param name="scale">The axis of times.</param>
    /// <param name="area">Where the curves go [px].</param>
    internal ResinProgressChart(IReadOnlyList<ResinLine> lines, ResinScale scale, SKRect area)
    {
        _lines = lines;
        _frame = new CurveFrame(area, scale, 0, HighestShare);
        Sheet = PlaceLabels();
    }

    /// <summary>The labels with what they had to stay clear of.</summary>
    internal LabelSheet Sheet { get; }

    /// <summary>Draws the chart.</summary>
    internal void Draw(SKCanvas canvas)
    {
        _frame.DrawAxes(canvas, [.. Enumerable.Range(0, 6).Select(i => (i * 0.2, $"{i * 20}"))], "wet share of the cloth [%]");
        foreach (var line in _lines)
        {
            using var fill = line.Style.Stroke(3);
            using var rest = Theme.Stroke(line.Style.Colour, 1.2f);
            CurvePainter.Line(canvas, Points(line, 0, line.EndS), fill);
            CurvePainter.Line(canvas, Points(line, line.EndS, line.GelS), rest);
        }

        foreach (var line in _lines)
        {
            if (!line.GelsFirst)
            {
                CurvePainter.Dot(canvas, End(line), 5.5f, line.Style.Colour);
            }

            if (_frame.Scale.Shows(line.GelS))
            {
                GelMark.Draw(canvas, Gel(line), line.Style.Colour);
            }
        }

        LabelPainter.Draw(canvas, Sheet.Labels);
    }

    private LabelSheet PlaceLabels()
    {
        var sheet = new LabelSheet(_frame.Area);
        foreach (var line in _lines)
        {
            sheet.Block(LineThinner.Thin(Points(line, 0, line.GelS), 0.5f), 5);
            sheet.Block(new LabelBox(End(line), 7, 7));
            if (_frame.Scale.Shows(line.GelS))
            {
                sheet.Block(new LabelBox(Gel(line), 9, 9));
            }
        }

        foreach (var line in _lines)
        {
            Put(sheet, line);
        }

        foreach (var line in _lines.Where(line => !line.GelsFirst && _frame.Scale.Shows(line.GelS)))
        {
            CalloutPlacer.Put(sheet, $"{line.Number} gels", [Gel(line)], 8, 70);
        }

        return sheet;
    }

    // As much as there is room for: name and end, then the name, then the number alone.
    private void Put(LabelSheet sheet, ResinLine line)
    {
        SKPoint[] places = [.. NameShares.Select(share => Along(line, share)).Prepend(End(line)).Where(place => IsAlone(line, place)), End(line)];
        var isNamed = _lines.Count <= MostNames
            && (CalloutPlacer.Put(sheet, $"{line.Name}: {line.End}", places, 9, 50, strong: true) || CalloutPlacer.Put(sheet, line.Name, places, 9, 110, strong: true));
        if (!isNamed)
        {
            CalloutPlacer.Put(sheet, $"{line.Number}", places, 5, 110, strong: true);
        }
    }

    // Where other curves are so near that a leader could mean them, it must not point.
    private bool IsAlone(ResinLine line, SKPoint place) =>
        _lines.Where(other => other != line).SelectMany(Curve).All(point => SKPoint.Distance(point, place) > NearestOther);

    // Where the curve has come to a share of its last height.
    private SKPoint Along(ResinLine line, double share)
    {
        var wanted = share * line.Resin.Forecast.FilledFraction;
        var point = line.Resin.Curve.FirstOrDefault(point => point.FilledFraction >= wanted) ?? line.Resin.Curve[^1];
        return _frame.At(Math.Min(point.TimeS, _frame.Scale.EndS), point.FilledFraction);
    }

    private SKPoint End(ResinLine line) => _frame.At(line.EndS, line.Resin.Forecast.FilledFraction);

    private SKPoint Gel(ResinLine line) => _frame.At(line.GelS, line.Resin.Forecast.FilledFraction);

    /// <summary>The curve of a resin up to its end [px].</summary>
    internal SKPoint[] Curve(ResinLine line) => Points(line, 0, line.EndS);

    private SKPoint[] Points(ResinLine line, double fromS, double toS)
    {
        var share = line.Resin.Forecast.FilledFraction;
        IEnumerable<(double, double)> start = fromS <= 0 ? [(0, 0)] : [(fromS, share)];
        return _frame.Curve(
        [
            .. start, .. line.Resin.Curve.Where(point => point.TimeS > fromS && point.TimeS < toS).Select(point => (point.TimeS, point.FilledFraction)), (toS, share),
        ]);
    }
}

using InfusionSim.Plots.Contours;
using InfusionSim.Plots.Labels;
using InfusionSim.Plots.Styling;
using InfusionSim.Protocol.V1;
using SkiaSharp;

namespace InfusionSim.Plots.Charts;

/// <summary>A smaller chart below the progress: one value of each resin against time, each curve numbered.</summary>
internal sealed class ResinSideChart
{
    private static readonly double[] Digits = [1, 2, 5];

    private static readonly double[] NumberPlaces = [0.75, 0.6, 0.9, 0.45, 0.3];

    private readonly IReadOnlyList<ResinLine> _lines;
    private readonly CurveFrame _frame;
    private readonly IReadOnlyList<(double Value, string Text)> _ticks;
    private readonly string _heading;
    private readonly string _up;
    private readonly Func<ResinCurvePoint, double?> _value;
    private readonly double? _mark;

    private ResinSideChart(
        IReadOnlyList<ResinLine> lines, CurveFrame frame, IReadOnlyList<(double Value, string Text)> ticks, (string Heading, string Up) words, Func<ResinCurvePoint, double?> value, double? mark)
    {
        (_lines, _frame, _ticks, _value, _mark) = (lines, frame, ticks, value, mark);
        (_heading, _up) = words;
        Sheet = PlaceLabels();
    }

    /// <summary>The labels with what they had to stay clear of.</summary>
    internal LabelSheet Sheet { get; }

    /// <summary>The chart of the viscosity, on a scale of powers of ten.</summary>
    /// <param name="lines">The resins.</param>
    /// <param name="scale">The axis of times.</param>
    /// <param name="area">Where the curves go [px].</param>
    internal static ResinSideChart Viscosity(IReadOnlyList<ResinLine> lines, ResinScale scale, SKRect area)
    {
        double[] values =
        [
            .. lines.SelectMany(line => line.Resin.Curve).Where(point => scale.Shows(point.TimeS)).Select(LogOfViscosity).OfType<double>(), .. lines.Select(line => Math.Log10(line.Resin.ViscosityAtOpeningPaS)),
        ];
        // At least one power of ten, at most three above the thinnest resin: what is thicker does not flow.
        var low = values.Min() - 0.15;
        var high = Math.Clamp(values.Max() + 0.15, low + 1, low + 3);
        var ticks = Enumerable.Range(-4, 9).SelectMany(power => Digits.Select(digit => digit * Math.Pow(10, power)))
            .Select(value => (Math.Log10(value), $"{value:0.####}")).Where(tick => tick.Item1 >= low && tick.Item1 <= high).ToArray();
        return new(lines, new CurveFrame(area, scale, low, high), ticks, ("How thick", "viscosity [Pa·s]"), LogOfViscosity, null);
    }

    /// <summary>The chart of how far the resin is driven: 100 % when the panel is full.</summary>
    /// <param name="lines">The resins.</param>
    /// <param name="scale">The axis of times.</param>
    /// <param name="area">Where the curves go [px].</param>
    internal static ResinSideChart Drive(IReadOnlyList<ResinLine> lines, ResinScale scale, SKRect area)
    {
        var most = lines.SelectMany(line => line.Resin.Curve).Where(point => scale.Shows(point.TimeS)).Select(point => point.DriveRatio).DefaultIfEmpty(1).Max();
        var high = Math.Clamp(1.1 * most, 1.25, 4);
        var step = high > 2.5 ? 1 : 0.5;
        var ticks = Enumerable.Range(0, 9).Select(i => (i * step, $"{100 * i * step:0}")).Where(tick => tick.Item1 <= high).ToArray();
        return new(lines, new CurveFrame(area, scale, 0, high), ticks, ("How far it could get", "of what a full panel takes [%]"), point => point.DriveRatio, 1);
    }

    /// <summary>Draws the chart.</summary>
    internal void Draw(SKCanvas canvas)
    {
        TextStyle.StrongLabel.Draw(canvas, _heading, _frame.Area.Left, _frame.Area.Top - 14, Theme.Ink);
        _frame.DrawAxes(canvas, _ticks, _up);
        if (_mark is { } mark)
        {
            using var level = Theme.Stroke(Theme.Ink, 1.4f, 9, 5);
            canvas.DrawLine(_frame.At(0, mark), _frame.At(_frame.Scale.EndS, mark), level);
        }

        foreach (var line in _lines)
        {
            var points = Points(line);
            using var stroke = line.Style.Stroke(2.4f);
            CurvePainter.Line(canvas, points, stroke);
            if (EndsAtGel(line))
            {
                GelMark.Draw(canvas, points[^1], line.Style.Colour);
            }
        }

        LabelPainter.Draw(canvas, Sheet.Labels);
    }

    private static double? LogOfViscosity(ResinCurvePoint point) => point is { HasViscosityPaS: true, ViscosityPaS: > 0 } ? Math.Log10(point.ViscosityPaS) : null;

    // A curve that leaves the chart above its edge has not come to its gel there.
    private bool EndsAtGel(ResinLine line) =>
        _frame.Scale.Shows(line.GelS) && Points(line) is { Length: > 0 } points && points[^1].Y > _frame.Area.Top + 1 && Shown(line)[^1].TimeS >= line.GelS * (1 - 1e-6);

    private LabelSheet PlaceLabels()
    {
        var sheet = new LabelSheet(_frame.Area);
        foreach (var line in _lines)
        {
            sheet.Block(LineThinner.Thin(Points(line), 0.5f), 4);
            if (EndsAtGel(line))
            {
                sheet.Block(new LabelBox(Points(line)[^1], 8, 8));
            }
        }

        if (_mark is { } mark)
        {
            sheet.Block([_frame.At(0, mark), _frame.At(_frame.Scale.EndS, mark)], 4);
            SKPoint[] places = [_frame.At(0.8 * _frame.Scale.EndS, mark), _frame.At(0.2 * _frame.Scale.EndS, mark), _frame.At(0.5 * _frame.Scale.EndS, mark)];
            CalloutPlacer.Put(sheet, "full", places, 4, 30, leader: false);
        }

        foreach (var line in _lines)
        {
            var points = Points(line);
            if (points.Length > 1)
            {
                CalloutPlacer.Put(sheet, $"{line.Number}", [.. NumberPlaces.Select(share => points[(int)(share * (points.Length - 1))])], 4, 60, strong: true);
            }
        }

        return sheet;
    }

    private (double TimeS, double Value)[] Shown(ResinLine line) =>
        [.. line.Resin.Curve.Where(point => _value(point) is not null).Select(point => (point.TimeS, _value(point)!.Value))];

    private SKPoint[] Points(ResinLine line) => _frame.Curve(Shown(line));
}

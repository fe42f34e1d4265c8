using InfusionSim.Plots.Contours;
using InfusionSim.Plots.Labels;
using InfusionSim.Plots.Panels;
using InfusionSim.Plots.Styling;
using InfusionSim.Protocol.V1;
using SkiaSharp;

namespace InfusionSim.Plots.Qualities;

/// <summary>One panel with a number in classes, at its place on a picture.</summary>
internal sealed class QualityScene
{
    private const float StrongWidth = 3.2f;
    private const float LongLine = 220;
    private const double SpeckSquares = 16;
    private const double SpeckShare = 2e-3;

    private readonly PanelAnswer _answer;
    private readonly QualityField _field;
    private readonly PanelView _view;
    private readonly LevelBands _bands;
    private readonly PlacedSigns _signs;

    /// <summary>Prepares a panel and places its labels.</summary>
    internal QualityScene(PanelAnswer answer, QualityField field, PanelView view)
    {
        (_answer, _field, _view) = (answer, field, view);
        var squares = SquareField.Continue(answer.Front.Grid, [.. field.Values.Select(field.Scaled)], straight: false);
        var above = field.Levels.Select(level => ContourTracer.Trace(squares, field.Scaled(level)).FindAll(ring => !IsSpeck(ring, squares.CellMm)));
        _bands = new LevelBands(view, answer.Cloth, field.Colours, [.. above], squares.CellMm, IsWet);
        (Sheet, _signs) = PlaceLabels();
    }

    /// <summary>The labels with what they had to stay clear of.</summary>
    internal LabelSheet Sheet { get; }

    /// <summary>Whether a dry spot stays.</summary>
    internal bool HasDrySpots => _answer.Map.Around(SquareState.DrySpot).Count > 0;

    /// <summary>Whether some cloth is never reached.</summary>
    internal bool HasNeverReached => _answer.Map.Around(SquareState.NeverReached).Count > 0;

    /// <summary>Draws the panel.</summary>
    internal void Draw(SKCanvas canvas)
    {
        using var cloth = _view.ToPath(_answer.Cloth.Rings);
        canvas.Save();
        canvas.ClipPath(cloth, SKClipOperation.Intersect, true);
        _bands.Fill(canvas, cloth);
        using var line = Theme.Stroke(Theme.Ink, Theme.IsochroneWidth);
        using var strong = Theme.Stroke(Theme.Ink, StrongWidth);
        for (var i = 0; i < _bands.Lines.Length; i++)
        {
            FrontPainter.Lines(canvas, _view, _bands.Lines[i], _field.Strong.Contains(_field.Levels[i]) ? strong : line);
        }

        PanelPainter.Regions(canvas, _view, _answer.Map.Around(SquareState.DrySpot), _answer.Map.Around(SquareState.NeverReached));
        canvas.Restore();
        PanelPainter.LayUp(canvas, _answer.Plan, _view, cloth);
        PanelPainter.Outline(canvas, cloth);
        PanelPainter.Lines(canvas, _answer.Plan, _view, withMarks: false);
        _signs.Draw(canvas);
        if (_field.Mark is { } mark)
        {
            LineSigns.LastPlace(canvas, _view.ToPixel(mark.At));
        }

        LabelPainter.Draw(canvas, Sheet.Labels);
    }

    private (LabelSheet Sheet, PlacedSigns Signs) PlaceLabels()
    {
        var area = _view.Area;
        area.Inflate(-3, -3);
        var sheet = new LabelSheet(area);
        PanelPainter.Block(sheet, _answer.Plan, _view, withMarks: false);
        if (_field.Mark is { } mark)
        {
            sheet.Block(new LabelBox(_view.ToPixel(mark.At), 15, 15));
            CalloutPlacer.Put(
                sheet, mark.Says, [_view.ToPixel(mark.At)], 20, 110, box => PanelPainter.CostOfCloth(box, _view, _answer.Cloth), strong: true);
        }

        PanelPainter.PlaceNames(sheet, _answer.Plan, _view, _answer.Cloth);
        var signs = PlacedSigns.Place(sheet, _answer.Plan, _view, _answer.Cloth);
        _bands.PlaceNumbers(sheet, i => _field.Text(_field.Levels[i]), LongLine);
        return (sheet, signs);
    }

    // What single squares say, where two fronts meet or an edge cuts them, is noise: no island of a few of them is drawn, unless it is a fair part of the panel.
    private bool IsSpeck(List<Spot> ring, double cellMm)
    {
        double twice = 0;
        for (int i = 0, j = ring.Count - 1; i < ring.Count; j = i++)
        {
            twice += ring[j].XMm * ring[i].YMm - ring[i].XMm * ring[j].YMm;
        }

        var area = Math.Abs(twice) / 2;
        return area < SpeckSquares * cellMm * cellMm && area < SpeckShare * _answer.Cloth.WidthMm * _answer.Cloth.HeightMm;
    }

    private bool IsWet(Spot spot) => _answer.Cloth.Contains(spot) && _answer.Map.IsWet(spot, double.PositiveInfinity);
}

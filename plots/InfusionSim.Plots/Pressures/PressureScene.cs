using InfusionSim.Plots.Contours;
using InfusionSim.Plots.Labels;
using InfusionSim.Plots.Panels;
using InfusionSim.Plots.Styling;
using InfusionSim.Protocol.V1;
using SkiaSharp;

namespace InfusionSim.Plots.Pressures;

/// <summary>One panel with its resin pressure, isobars and front, at its place on a picture.</summary>
internal sealed class PressureScene
{
    private readonly InfusionPlan _plan;
    private readonly ClothArea _cloth;
    private readonly ArrivalMap _map;
    private readonly PanelView _view;
    private readonly bool _isEnd;
    private readonly double _timeS;
    private readonly LevelBands _bands;
    private readonly LabelSheet _sheet;
    private readonly PlacedSigns _signs;

    /// <summary>Prepares a panel and places its labels.</summary>
    internal PressureScene(PanelAnswer answer, FillMoment moment, PanelView view)
    {
        (_plan, _cloth, _map, _view) = (answer.Plan, answer.Cloth, answer.Map, view);
        (_isEnd, _timeS) = (answer.IsEnd(moment), moment.TimeS);
        LowMbar = _plan.Bag.PressureMbarAbs;
        HighMbar = Math.Max(LowMbar + 1, moment.PressureMbarAbs.Max());
        LevelsMbar = RoundPressures.Between(LowMbar, HighMbar);
        Colours = [.. Enumerable.Range(0, LevelsMbar.Length + 1).Select(i => PressureColours.Of(i, LevelsMbar.Length + 1))];
        var squares = answer.Front.Squares;
        double[] known = [.. moment.PressureMbarAbs.Select((pressure, i) => squares[i] == (byte)SquareState.NoCloth ? double.NaN : pressure)];
        var field = SquareField.Continue(moment.Grid, known, straight: true);
        _bands = new LevelBands(view, answer.Cloth, Colours, [.. LevelsMbar.Select(level => ContourTracer.Trace(field, level))], field.CellMm, IsWet);
        (_sheet, _signs) = PlaceLabels();
    }

    /// <summary>Pressure under the bag, absolute [mbar].</summary>
    internal double LowMbar { get; }

    /// <summary>Highest pressure, absolute [mbar].</summary>
    internal double HighMbar { get; }

    /// <summary>Pressures of the isobars in order, absolute [mbar].</summary>
    internal double[] LevelsMbar { get; }

    /// <summary>Colour below the first isobar, between each two, and above the last.</summary>
    internal SKColor[] Colours { get; }

    /// <summary>Whether a dry spot stays.</summary>
    internal bool HasDrySpots => _map.Around(SquareState.DrySpot).Count > 0;

    /// <summary>Whether some cloth is never reached.</summary>
    internal bool HasNeverReached => _map.Around(SquareState.NeverReached).Count > 0;

    /// <summary>Draws the panel.</summary>
    internal void Draw(SKCanvas canvas)
    {
        using var cloth = _view.ToPath(_cloth.Rings);
        canvas.Save();
        canvas.ClipPath(cloth, SKClipOperation.Intersect, true);
        _bands.Fill(canvas, cloth);
        using var line = Theme.Stroke(Theme.Ink, Theme.IsochroneWidth);
        FrontPainter.Lines(canvas, _view, _bands.Lines.SelectMany(lines => lines), line);
        FrontPainter.DryAt(canvas, _view, _map, _timeS, _isEnd);
        canvas.Restore();
        PanelPainter.LayUp(canvas, _plan, _view, cloth);
        PanelPainter.Outline(canvas, cloth);
        PanelPainter.Lines(canvas, _plan, _view, withMarks: false);
        _signs.Draw(canvas);
        LabelPainter.Draw(canvas, _sheet.Labels);
    }

    private (LabelSheet Sheet, PlacedSigns Signs) PlaceLabels()
    {
        var area = _view.Area;
        area.Inflate(-3, -3);
        var sheet = new LabelSheet(area);
        PanelPainter.Block(sheet, _plan, _view);
        PanelPainter.PlaceNames(sheet, _plan, _view, _cloth);
        var signs = PlacedSigns.Place(sheet, _plan, _view, _cloth);
        SKPoint[] front = _isEnd ? [] : [.. _map.At(_timeS).Lines.SelectMany(line => _view.ToPixels(line))];
        _bands.PlaceNumbers(sheet, i => $"{LevelsMbar[i]:0} mbar", keepClear: front, highestFirst: true);
        return (sheet, signs);
    }

    private bool IsWet(Spot spot) => _cloth.Contains(spot) && _map.IsWet(spot, _timeS);
}

using InfusionSim.Plots.Contours;
using InfusionSim.Plots.Keys;
using InfusionSim.Plots.Labels;
using InfusionSim.Plots.Panels;
using InfusionSim.Plots.Styling;
using InfusionSim.Plots.Words;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;
using SkiaSharp;

namespace InfusionSim.Plots.Lags;

/// <summary>One panel with the lag of one side behind the other, at its place on a picture.</summary>
internal sealed class LagScene
{
    // The lag grows and shrinks again: both lines of a level want their number.
    private const float LongLine = 150;

    private readonly PanelAnswer _bag;
    private readonly PanelAnswer _tool;
    private readonly PanelView _view;
    private readonly SideLag _lag;
    private readonly double[] _levelsS;
    private readonly SKColor[] _colours;
    private readonly LevelBands _bands;
    private readonly PlacedSigns _signs;

    /// <summary>Prepares a panel and places its labels.</summary>
    internal LagScene(PanelAnswer bag, PanelAnswer tool, SideLag lag, PanelView view)
    {
        (_bag, _tool, _lag, _view) = (bag, tool, lag, view);
        _levelsS = lag.At is null ? [] : RoundTimes.Before(lag.LargestS);
        _colours = [.. Enumerable.Range(0, _levelsS.Length + 1).Select(i => LagColours.Of(i, _levelsS.Length + 1))];
        var field = SquareField.Continue(bag.Front.Grid, lag.BehindS, straight: false);
        _bands = new LevelBands(view, bag.Cloth, _colours, [.. _levelsS.Select(level => ContourTracer.Trace(field, level))], field.CellMm, IsWetOnBothSides);
        (Sheet, _signs) = PlaceLabels();
    }

    /// <summary>The labels with what they had to stay clear of.</summary>
    internal LabelSheet Sheet { get; }

    /// <summary>Whether a dry spot stays on either side.</summary>
    internal bool HasDrySpots => Has(SquareState.DrySpot);

    /// <summary>Whether some cloth is never reached on either side.</summary>
    internal bool HasNeverReached => Has(SquareState.NeverReached);

    /// <summary>The bar that explains the colours.</summary>
    internal ClassScale Key => new(
        $"{(_lag.IsToolSide ? "Tool" : "Bag")} side behind by", _colours, [.. _levelsS.Select(TimeText.Of)], "0", Amounts.Time(_lag.LargestS));

    /// <summary>Draws the panel.</summary>
    internal void Draw(SKCanvas canvas)
    {
        using var cloth = _view.ToPath(_bag.Cloth.Rings);
        canvas.Save();
        canvas.ClipPath(cloth, SKClipOperation.Intersect, true);
        _bands.Fill(canvas, cloth);
        using var line = Theme.Stroke(Theme.Ink, Theme.IsochroneWidth);
        FrontPainter.Lines(canvas, _view, _bands.Lines.SelectMany(lines => lines), line);
        foreach (var side in new[] { _bag, _tool })
        {
            PanelPainter.Regions(canvas, _view, side.Map.Around(SquareState.DrySpot), side.Map.Around(SquareState.NeverReached));
        }

        canvas.Restore();
        PanelPainter.LayUp(canvas, _bag.Plan, _view, cloth);
        PanelPainter.Outline(canvas, cloth);
        PanelPainter.Lines(canvas, _bag.Plan, _view, withMarks: false);
        _signs.Draw(canvas);
        if (_lag.At is { } at)
        {
            LineSigns.LargestLag(canvas, _view.ToPixel(at));
        }

        LabelPainter.Draw(canvas, Sheet.Labels);
    }

    private (LabelSheet Sheet, PlacedSigns Signs) PlaceLabels()
    {
        var area = _view.Area;
        area.Inflate(-3, -3);
        var sheet = new LabelSheet(area);
        PanelPainter.Block(sheet, _bag.Plan, _view, withMarks: false);
        if (_lag.At is { } at)
        {
            sheet.Block(new LabelBox(_view.ToPixel(at), 15, 15));
            CalloutPlacer.Put(
                sheet, $"longest behind, {Amounts.Time(_lag.LargestS)}", [_view.ToPixel(at)], 20, 110,
                box => PanelPainter.CostOfCloth(box, _view, _bag.Cloth), strong: true);
        }

        PanelPainter.PlaceNames(sheet, _bag.Plan, _view, _bag.Cloth);
        var signs = PlacedSigns.Place(sheet, _bag.Plan, _view, _bag.Cloth);
        _bands.PlaceNumbers(sheet, i => TimeText.Of(_levelsS[i]), LongLine);
        return (sheet, signs);
    }

    private bool Has(SquareState state) => _bag.Map.Around(state).Count > 0 || _tool.Map.Around(state).Count > 0;

    private bool IsWetOnBothSides(Spot spot) =>
        _bag.Cloth.Contains(spot) && _bag.Map.IsWet(spot, double.PositiveInfinity) && _tool.Map.IsWet(spot, double.PositiveInfinity);
}

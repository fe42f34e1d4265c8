using InfusionSim.Plots.Contours;
using InfusionSim.Plots.Labels;
using InfusionSim.Plots.Panels;
using InfusionSim.Plots.Styling;
using InfusionSim.Protocol.V1;
using SkiaSharp;

namespace InfusionSim.Plots.Fronts;

/// <summary>One panel with its arrival times, lines and labels, at its place on a picture.</summary>
internal sealed class FrontScene
{
    private const float NearDrySpot = 45;

    private readonly PanelAnswer _answer;
    private readonly PanelView _view;
    private readonly TimeScale _scale;
    private readonly Isochrone[] _isochrones;
    private readonly bool _isLastBesideDrySpot;

    /// <summary>Prepares a panel and places its labels.</summary>
    internal FrontScene(PanelAnswer answer, PanelView view, TimeScale scale)
    {
        (_answer, _view, _scale) = (answer, view, scale);
        _isochrones = [.. scale.TimesS.Select(answer.Map.At)];
        DrySpots = answer.Map.Around(SquareState.DrySpot);
        NeverReached = answer.Map.Around(SquareState.NeverReached);
        Last = answer.Last() is { } last ? view.ToPixel(last.At) : null;
        _isLastBesideDrySpot = Last is { } at && answer.Forecast.DrySpots.Any(spot => SKPoint.Distance(at, view.ToPixel(ClothArea.Read(spot.At))) < NearDrySpot);
        var labels = new FrontLabels(answer, view);
        Sheet = labels.Place(scale, _isochrones, Last, DrySpots);
        Signs = labels.Signs;
    }

    /// <summary>Rings around the dry spots [mm].</summary>
    internal List<List<Spot>> DrySpots { get; }

    /// <summary>Rings around the cloth that is never reached [mm].</summary>
    internal List<List<Spot>> NeverReached { get; }

    /// <summary>The last place to fill; null when there is none [px].</summary>
    internal SKPoint? Last { get; }

    /// <summary>The labels with what they had to stay clear of.</summary>
    internal LabelSheet Sheet { get; }

    /// <summary>The signs that stand wherever there is room.</summary>
    internal PlacedSigns Signs { get; }

    /// <summary>Draws the panel.</summary>
    internal void Draw(SKCanvas canvas)
    {
        using var cloth = _view.ToPath(_answer.Cloth.Rings);
        canvas.Save();
        canvas.ClipPath(cloth, SKClipOperation.Intersect, true);
        DrawBands(canvas, cloth);
        DrawLines(canvas);
        PanelPainter.Regions(canvas, _view, DrySpots, NeverReached);
        canvas.Restore();
        PanelPainter.LayUp(canvas, _answer.Plan, _view, cloth);
        PanelPainter.Outline(canvas, cloth);
        PanelPainter.Lines(canvas, _answer.Plan, _view);
        Signs.Draw(canvas);
        if (Last is { } last)
        {
            LineSigns.LastPlace(canvas, last, _isLastBesideDrySpot ? 0.65f : 1);
        }

        LabelPainter.Draw(canvas, Sheet.Labels);
    }

    private void DrawBands(SKCanvas canvas, SKPath cloth)
    {
        using var first = Theme.Fill(_scale.Colours[0]);
        canvas.DrawPath(cloth, first);
        for (var i = 0; i < _scale.TimesS.Length; i++)
        {
            using var later = _view.ToPath(_answer.Map.From(_scale.TimesS[i]));
            using var fill = Theme.Fill(_scale.Colours[i + 1]);
            canvas.DrawPath(later, fill);
        }
    }

    private void DrawLines(SKCanvas canvas)
    {
        using var stroke = Theme.Stroke(Theme.Ink, Theme.IsochroneWidth);
        FrontPainter.Lines(canvas, _view, _isochrones.SelectMany(isochrone => isochrone.Lines), stroke);
    }
}

using InfusionSim.Plots.Contours;
using InfusionSim.Plots.Labels;
using InfusionSim.Plots.Panels;
using InfusionSim.Plots.Styling;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;
using SkiaSharp;

namespace InfusionSim.Plots.Fronts;

/// <summary>One panel with its arrival times, lines and labels, at its place on a picture.</summary>
internal sealed class FrontScene
{
    private const float NearDrySpot = 45;

    private readonly InfusionPlan _plan;
    private readonly ClothArea _cloth;
    private readonly ArrivalMap _map;
    private readonly PanelView _view;
    private readonly TimeScale _scale;
    private readonly Isochrone[] _isochrones;
    private readonly bool _isLastBesideDrySpot;

    /// <summary>Prepares a panel and places its labels.</summary>
    internal FrontScene(InfusionPlan plan, PredictFillResponse response, PanelView view, TimeScale scale)
    {
        _plan = plan;
        _cloth = new ClothArea(plan);
        _map = new ArrivalMap(response.FrontMap, _cloth);
        _view = view;
        _scale = scale;
        _isochrones = [.. scale.TimesS.Select(_map.At)];
        DrySpots = _map.Around(SquareState.DrySpot);
        NeverReached = _map.Around(SquareState.NeverReached);
        Last = response.Forecast.LastToFill is { } last && response.Forecast.EndTimeS > 0 ? view.ToPixel(ClothArea.Read(last)) : null;
        _isLastBesideDrySpot = Last is { } at && response.Forecast.DrySpots.Any(spot => SKPoint.Distance(at, view.ToPixel(ClothArea.Read(spot.At))) < NearDrySpot);
        Sheet = new FrontLabels(plan, response.Forecast, _cloth, view, LastEdgeOf(plan, response)).Place(scale, _isochrones, Last, DrySpots);
    }

    /// <summary>Rings around the dry spots [mm].</summary>
    internal List<List<Spot>> DrySpots { get; }

    /// <summary>Rings around the cloth that is never reached [mm].</summary>
    internal List<List<Spot>> NeverReached { get; }

    /// <summary>The last place to fill; null when there is none [px].</summary>
    internal SKPoint? Last { get; }

    /// <summary>The labels with what they had to stay clear of.</summary>
    internal LabelSheet Sheet { get; }

    /// <summary>Draws the panel.</summary>
    internal void Draw(SKCanvas canvas)
    {
        using var cloth = _view.ToPath(_cloth.Rings);
        canvas.Save();
        canvas.ClipPath(cloth, SKClipOperation.Intersect, true);
        DrawBands(canvas, cloth);
        DrawLines(canvas);
        PanelPainter.Regions(canvas, _view, DrySpots, NeverReached);
        canvas.Restore();
        PanelPainter.Zones(canvas, _plan, _view, cloth);
        PanelPainter.Outline(canvas, cloth);
        PanelPainter.Lines(canvas, _plan, _view);
        if (Last is { } last)
        {
            LineSigns.LastPlace(canvas, last, _isLastBesideDrySpot ? 0.65f : 1);
        }

        LabelPainter.Draw(canvas, Sheet.Labels);
    }

    // The front can come to a whole edge at once; one sign on its corner would then say too little.
    private static string LastEdgeOf(InfusionPlan plan, PredictFillResponse response)
    {
        var words = response.Forecast.LastToFill is null ? "" : PlaceWords.OfLast(response.Forecast, response.FrontMap, plan);
        return words.EndsWith(" edge", StringComparison.Ordinal) ? ": " + words : "";
    }

    private void DrawBands(SKCanvas canvas, SKPath cloth)
    {
        using var first = Theme.Fill(_scale.Colours[0]);
        canvas.DrawPath(cloth, first);
        for (var i = 0; i < _scale.TimesS.Length; i++)
        {
            using var later = _view.ToPath(_map.From(_scale.TimesS[i]));
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

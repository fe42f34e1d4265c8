using InfusionSim.Plots.Contours;
using InfusionSim.Plots.Labels;
using InfusionSim.Plots.Panels;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;
using SkiaSharp;

namespace InfusionSim.Plots.Fronts;

/// <summary>Finds a place for every label of a front picture: the words that matter most choose first.</summary>
/// <param name="plan">The plan.</param>
/// <param name="forecast">Its forecast.</param>
/// <param name="cloth">Its cloth.</param>
/// <param name="view">Where the panel lies.</param>
/// <param name="lastEdge">The edge that fills last as a whole, with what leads up to it; empty when it is a place.</param>
internal sealed class FrontLabels(InfusionPlan plan, FillForecast forecast, ClothArea cloth, PanelView view, string lastEdge)
{
    private const int DrySpotsNamed = 3;

    /// <summary>Places the labels.</summary>
    internal LabelSheet Place(TimeScale scale, IReadOnlyList<Isochrone> isochrones, SKPoint? last, IReadOnlyList<List<Spot>> drySpots)
    {
        var area = view.Area;
        area.Inflate(-3, -3);
        var sheet = new LabelSheet(area);
        PanelPainter.Block(sheet, plan, view);
        if (last is { } at)
        {
            sheet.Block(new LabelBox(at, 14, 14));
        }

        foreach (var ring in drySpots)
        {
            sheet.Block(LineThinner.Thin([.. view.ToPixels(ring), view.ToPixel(ring[0])], 1), 4);
        }

        PlaceLast(sheet, last);
        PlaceDrySpots(sheet);
        PanelPainter.PlaceNames(sheet, plan, view, cloth);
        PlaceTimingMarks(sheet);
        PlaceIsochrones(sheet, scale, isochrones);
        return sheet;
    }

    private void PlaceLast(LabelSheet sheet, SKPoint? last)
    {
        if (last is { } at)
        {
            var text = forecast.Outcome == Outcome.GelsFirst ? "last, gels before" : $"last{lastEdge}, {Amounts.Time(forecast.EndTimeS)}";
            CalloutPlacer.Put(sheet, text, [at], 18, 90, strong: true);
        }
    }

    private void PlaceDrySpots(LabelSheet sheet)
    {
        foreach (var spot in forecast.DrySpots.Take(DrySpotsNamed))
        {
            var at = view.ToPixel(ClothArea.Read(spot.At));
            var radius = (float)(Math.Sqrt(spot.AreaMm2 / Math.PI) * view.PixelsPerMm);
            CalloutPlacer.Put(sheet, $"dry, {Amounts.Area(spot.AreaMm2)}", [at], radius + 10, 110, strong: true);
        }
    }

    private void PlaceTimingMarks(LabelSheet sheet)
    {
        var arrivals = forecast.TimingMarks.ToLookup(mark => mark.Name);
        foreach (var mark in plan.TimingMarks)
        {
            var arrival = arrivals[mark.Name].FirstOrDefault();
            var text = arrival is { HasArrivalTimeS: true } ? $"{mark.Name}  {Amounts.Time(arrival.ArrivalTimeS)}" : $"{mark.Name}  never";
            CalloutPlacer.Put(sheet, text, [view.ToPixel(ClothArea.Read(mark.At))], 9, 60, leader: false);
        }
    }

    private void PlaceIsochrones(LabelSheet sheet, TimeScale scale, IReadOnlyList<Isochrone> isochrones)
    {
        var lines = isochrones.Select(isochrone => isochrone.Lines.Select(view.ToPixels).ToArray()).ToArray();
        SKPoint? near = null;
        for (var i = 0; i < lines.Length; i++)
        {
            SKPoint[] others = [.. lines.Where((_, other) => other != i).SelectMany(other => other).SelectMany(line => line)];
            near = LineLabelPlacer.Put(
                sheet, scale.Texts[i], lines[i], others, pixel => cloth.Contains(view.ToSpot(pixel)), near) ?? near;
        }
    }
}

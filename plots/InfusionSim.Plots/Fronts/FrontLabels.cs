using InfusionSim.Plots.Contours;
using InfusionSim.Plots.Labels;
using InfusionSim.Plots.Panels;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;
using SkiaSharp;

namespace InfusionSim.Plots.Fronts;

/// <summary>Finds a place for every label of a front picture: the words that matter most choose first.</summary>
/// <param name="answer">The plan and its answer.</param>
/// <param name="view">Where the panel lies.</param>
internal sealed class FrontLabels(PanelAnswer answer, PanelView view)
{
    private const int DrySpotsNamed = 3;

    /// <summary>The signs that stand wherever there is room.</summary>
    internal PlacedSigns Signs { get; private set; } = PlacedSigns.None;

    /// <summary>Places the labels.</summary>
    internal LabelSheet Place(TimeScale scale, IReadOnlyList<Isochrone> isochrones, SKPoint? last, IReadOnlyList<List<Spot>> drySpots)
    {
        var area = view.Area;
        area.Inflate(-3, -3);
        var sheet = new LabelSheet(area);
        PanelPainter.Block(sheet, answer.Plan, view);
        if (last is { } at)
        {
            sheet.Block(new LabelBox(at, 14, 14));
        }

        foreach (var ring in drySpots)
        {
            sheet.Block(LineThinner.Thin([.. view.ToPixels(ring), view.ToPixel(ring[0])], 1), 4);
        }

        PlaceLast(sheet, last);
        PlaceDrySpots(sheet, drySpots.Count > 0);
        PanelPainter.PlaceNames(sheet, answer.Plan, view, answer.Cloth);
        PlaceTimingMarks(sheet);
        Signs = PlacedSigns.Place(sheet, answer.Plan, view, answer.Cloth);
        PlaceIsochrones(sheet, scale, isochrones);
        return sheet;
    }

    // The front can come to a whole edge at once; one sign on its corner would then say too little.
    private string LastEdge()
    {
        var words = answer.Forecast.LastToFill is null ? "" : PlaceWords.OfLast(answer.Forecast, answer.Front, answer.Plan);
        return words.EndsWith(" edge", StringComparison.Ordinal) ? ": " + words : "";
    }

    private void PlaceLast(LabelSheet sheet, SKPoint? last)
    {
        if (last is { } at && answer.Last() is { } place)
        {
            var side = answer.HasSides ? $" on the {answer.Side}" : "";
            var text = answer.Forecast.Outcome == Outcome.GelsFirst ? "last, gels before" : $"last{side}{LastEdge()}, {Amounts.Time(place.TimeS)}";
            CalloutPlacer.Put(sheet, text, [at], 18, 90, strong: true);
        }
    }

    private void PlaceDrySpots(LabelSheet sheet, bool isAnyShown)
    {
        foreach (var spot in answer.Forecast.DrySpots.Take(isAnyShown ? DrySpotsNamed : 0))
        {
            var at = view.ToPixel(ClothArea.Read(spot.At));
            var radius = (float)(Math.Sqrt(spot.AreaMm2 / Math.PI) * view.PixelsPerMm);
            CalloutPlacer.Put(sheet, $"dry, {Amounts.Area(spot.AreaMm2)}", [at], radius + 10, 110, strong: true);
        }
    }

    private void PlaceTimingMarks(LabelSheet sheet)
    {
        var arrivals = answer.Forecast.TimingMarks.ToLookup(mark => mark.Name);
        foreach (var mark in answer.Plan.TimingMarks)
        {
            var text = $"{mark.Name}  {(ArrivalAt(arrivals[mark.Name].FirstOrDefault()) is { } timeS ? Amounts.Time(timeS) : "never")}";
            CalloutPlacer.Put(sheet, text, [view.ToPixel(ClothArea.Read(mark.At))], 9, 60, leader: false);
        }
    }

    private double? ArrivalAt(TimingMarkForecast? mark) => mark switch
    {
        { HasToolSideArrivalTimeS: true } when answer.Face == PanelFace.ToolSide => mark.ToolSideArrivalTimeS,
        { HasArrivalTimeS: true } when answer.Face != PanelFace.ToolSide => mark.ArrivalTimeS,
        _ => null,
    };

    private void PlaceIsochrones(LabelSheet sheet, TimeScale scale, IReadOnlyList<Isochrone> isochrones)
    {
        var lines = isochrones.Select(isochrone => isochrone.Lines.Select(view.ToPixels).ToArray()).ToArray();
        SKPoint? near = null;
        for (var i = 0; i < lines.Length; i++)
        {
            SKPoint[] others = [.. lines.Where((_, other) => other != i).SelectMany(other => other).SelectMany(line => line)];
            near = LineLabelPlacer.Put(
                sheet, scale.Texts[i], lines[i], others, pixel => answer.Cloth.Contains(view.ToSpot(pixel)), near) ?? near;
        }
    }
}

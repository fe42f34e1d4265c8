using InfusionSim.Plots.Contours;
using InfusionSim.Plots.Labels;
using InfusionSim.Plots.Styling;
using InfusionSim.Protocol.V1;
using SkiaSharp;

namespace InfusionSim.Plots.Panels;

/// <summary>Signs that stand wherever there is room: strokes along turned cloth, the arrow that points uphill.</summary>
internal sealed class PlacedSigns
{
    private const float StrokePitch = 96;
    private const float StrokeHalf = 15;
    private const int MostStrokes = 8;
    private const float ArrowHalf = 16;

    /// <summary>No signs.</summary>
    internal static readonly PlacedSigns None = new();

    private readonly List<LabelBox> _strokes = [];
    private LabelBox? _arrow;
    private double _uphillDeg;

    private PlacedSigns()
    {
    }

    /// <summary>Where the signs stand.</summary>
    internal IEnumerable<LabelBox> Boxes => _arrow is { } arrow ? _strokes.Append(arrow) : _strokes;

    /// <summary>Finds a place for each sign and keeps it.</summary>
    /// <param name="sheet">What is taken.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="view">Where the panel lies.</param>
    /// <param name="cloth">Its cloth.</param>
    internal static PlacedSigns Place(LabelSheet sheet, InfusionPlan plan, PanelView view, ClothArea cloth)
    {
        var signs = new PlacedSigns();
        if (plan.Slope is { AngleDeg: > 0 } slope)
        {
            signs.PlaceArrow(sheet, slope, view, cloth);
        }

        for (var zone = 0; zone < plan.Preform.Zones.Count; zone++)
        {
            if (FibreDirection.Of(plan.Preform.Zones[zone]) is { } angle)
            {
                signs.PlaceStrokes(sheet, plan, zone, angle, view, cloth);
            }
        }

        return signs;
    }

    /// <summary>Draws the signs.</summary>
    internal void Draw(SKCanvas canvas)
    {
        foreach (var stroke in _strokes)
        {
            FibreStrokes(canvas, stroke.Centre, stroke.Angle);
        }

        if (_arrow is { } arrow)
        {
            UphillArrow(canvas, arrow.Centre, _uphillDeg);
        }
    }

    /// <summary>Turned cloth: two short strokes side by side along it.</summary>
    /// <param name="canvas">What to draw on.</param>
    /// <param name="at">Their middle [px].</param>
    /// <param name="angle">Turn from the picture's x towards its y [rad].</param>
    /// <param name="half">Half their length [px].</param>
    internal static void FibreStrokes(SKCanvas canvas, SKPoint at, float angle, float half = StrokeHalf)
    {
        canvas.Save();
        canvas.Translate(at.X, at.Y);
        canvas.RotateRadians(angle);
        using var casing = Theme.Stroke(Theme.Paper, 5.5f);
        using var stroke = Theme.Stroke(Theme.Ink, 2.2f);
        foreach (var paint in new[] { casing, stroke })
        {
            canvas.DrawLine(-half, -3.2f, half, -3.2f, paint);
            canvas.DrawLine(-half, 3.2f, half, 3.2f, paint);
        }

        canvas.Restore();
    }

    private static void UphillArrow(SKCanvas canvas, SKPoint at, double uphillDeg)
    {
        canvas.Save();
        canvas.Translate(at.X, at.Y);
        canvas.RotateDegrees((float)-uphillDeg);
        using var builder = new SKPathBuilder();
        builder.AddPoly([new(-14, -3.5f), new(2, -3.5f), new(2, -10), new(15, 0), new(2, 10), new(2, 3.5f), new(-14, 3.5f)], true);
        using var arrow = builder.Detach();
        using var casing = Theme.Stroke(Theme.Paper, 4);
        using var fill = Theme.Fill(Theme.Ink);
        canvas.DrawPath(arrow, casing);
        canvas.DrawPath(arrow, fill);
        canvas.Restore();
    }

    private void PlaceArrow(LabelSheet sheet, Slope slope, PanelView view, ClothArea cloth)
    {
        var area = view.Area;
        area.Inflate(-ArrowHalf - 1, -ArrowHalf - 1);
        var free = Enumerable.Range(0, 13 * 25)
            .Select(i => new SKPoint(area.Left + area.Width * (i % 25) / 24, area.Top + area.Height * (i / 25) / 12))
            .Select(at => new LabelBox(at, ArrowHalf, ArrowHalf)).Where(place => sheet.IsFree(place)).ToArray();
        if (free.Length == 0)
        {
            return;
        }

        // Beside the cloth where there is room, else where it hides least.
        var best = free.MinBy(place => place.Corners().Append(place.Centre).Count(point => cloth.Contains(view.ToSpot(point))));
        (_arrow, _uphillDeg) = (best, slope.UphillDeg);
        sheet.Block(best);
        CalloutPlacer.Put(
            sheet, $"uphill, {slope.AngleDeg:0.#}°", [best.Centre], ArrowHalf + 1, 60, box => PanelPainter.CostOfCloth(box, view, cloth), strong: true, leader: false);
    }

    private void PlaceStrokes(LabelSheet sheet, InfusionPlan plan, int zone, double angleDeg, PanelView view, ClothArea cloth)
    {
        var angle = (float)(-angleDeg * Math.PI / 180);
        var area = view.Area;
        var found = new List<LabelBox>();
        Spot[][] borders = [.. plan.FlowMeshes.Select(mesh => mesh.Area).Concat(plan.Cores.Select(core => core.Area))
            .Where(ring => ring is { Points.Count: > 2 }).Select(ring => ring!.Points.Select(ClothArea.Read).ToArray())];
        for (var row = 0; (row + 0.5f) * StrokePitch < area.Height; row++)
        {
            for (var column = 0; (column + 0.5f) * StrokePitch < area.Width; column++)
            {
                var shift = row % 2 == 0 ? 0.5f : 1;
                var box = new LabelBox(new SKPoint(area.Left + (column + shift) * StrokePitch, area.Top + (row + 0.5f) * StrokePitch), StrokeHalf + 3, 7, angle);
                Spot[] corners = [.. box.Grow(6).Corners().Select(view.ToSpot)];
                if (sheet.IsFree(box) && corners.All(corner => IsInZone(corner, plan, zone, cloth)) && !borders.Any(border => IsCut(border, corners)))
                {
                    found.Add(box);
                }
            }
        }

        var every = Math.Max(1, (found.Count + MostStrokes - 1) / MostStrokes);
        foreach (var box in found.Where((_, i) => i % every == 0))
        {
            _strokes.Add(box);
            sheet.Block(box);
        }
    }

    private static bool IsCut(Spot[] border, Spot[] corners) => corners.Select(corner => ClothArea.IsInside(border, corner)).Distinct().Count() > 1;

    private static bool IsInZone(Spot spot, InfusionPlan plan, int zone, ClothArea cloth)
    {
        var zones = plan.Preform.Zones;
        bool Covers(int other) => zones[other].Area is not { Points.Count: > 2 } ring || ClothArea.IsInside([.. ring.Points.Select(ClothArea.Read)], spot);
        return cloth.Contains(spot) && Covers(zone) && !Enumerable.Range(zone + 1, zones.Count - zone - 1).Any(Covers);
    }
}

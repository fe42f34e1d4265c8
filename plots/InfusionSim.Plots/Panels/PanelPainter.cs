using InfusionSim.Plots.Contours;
using InfusionSim.Plots.Labels;
using InfusionSim.Plots.Styling;
using InfusionSim.Protocol.V1;
using SkiaSharp;

namespace InfusionSim.Plots.Panels;

/// <summary>Draws what every panel picture shows: outline, zones, feeds, vents, timing marks, dry and unreached cloth.</summary>
internal static class PanelPainter
{
    private static readonly float[] NameShares = [0.5f, 0.35f, 0.65f, 0.2f, 0.8f];

    /// <summary>Hatches dry and unreached cloth; the canvas is already cut to the cloth.</summary>
    internal static void Regions(SKCanvas canvas, PanelView view, List<List<Spot>> drySpots, List<List<Spot>> neverReached)
    {
        if (neverReached.Count > 0)
        {
            using var area = view.ToPath(neverReached);
            Hatching.NeverReached(canvas, area);
        }

        if (drySpots.Count > 0)
        {
            using var area = view.ToPath(drySpots);
            Hatching.DrySpot(canvas, area);
        }
    }

    /// <summary>The borders of the zones that cover only a part, faintly; cores, meshes and gaps.</summary>
    internal static void LayUp(SKCanvas canvas, InfusionPlan plan, PanelView view, SKPath cloth)
    {
        Zones(canvas, plan, view, cloth);
        LayUpSigns.Draw(canvas, plan, view, cloth);
    }

    /// <summary>The true edge of the cloth.</summary>
    internal static void Outline(SKCanvas canvas, SKPath cloth, float width = Theme.OutlineWidth)
    {
        using var stroke = Theme.Stroke(Theme.Ink, width);
        canvas.DrawPath(cloth, stroke);
    }

    /// <summary>Feeds and vents; timing marks and the places where hoses join, too, if asked for.</summary>
    internal static void Lines(SKCanvas canvas, InfusionPlan plan, PanelView view, float least = Theme.LeastLineWidth, bool withMarks = true, bool withHoses = true)
    {
        foreach (var vent in plan.Vents)
        {
            LineSigns.Vent(canvas, LineSigns.Line(vent.Path, view), LineSigns.Width(vent, view, least), vent.Kind == VentKind.Membrane);
        }

        foreach (var feed in plan.Feeds)
        {
            LineSigns.Feed(canvas, LineSigns.Line(feed.Path, view), LineSigns.Width(feed, view, least));
        }

        foreach (var joint in LayUpSigns.HoseJoints(plan, view).Where(_ => withHoses))
        {
            LayUpSigns.HoseJoint(canvas, joint);
        }

        foreach (var mark in plan.TimingMarks.Where(_ => withMarks))
        {
            LineSigns.TimingMark(canvas, view.ToPixel(ClothArea.Read(mark.At)));
        }
    }

    /// <summary>Keeps labels off feeds, vents, gaps and timing marks.</summary>
    internal static void Block(LabelSheet sheet, InfusionPlan plan, PanelView view, bool withMarks = true)
    {
        foreach (var feed in plan.Feeds)
        {
            sheet.Block(LineSigns.Line(feed.Path, view), LineSigns.Width(feed, view) + 3);
        }

        foreach (var vent in plan.Vents)
        {
            sheet.Block(LineSigns.Line(vent.Path, view), LineSigns.Width(vent, view) + 3);
        }

        foreach (var gap in plan.Gaps)
        {
            sheet.Block(LineSigns.Line(gap.Path, view), 11);
        }

        foreach (var joint in LayUpSigns.HoseJoints(plan, view))
        {
            sheet.Block(new LabelBox(joint, 12, 12));
        }

        foreach (var mark in plan.TimingMarks.Where(_ => withMarks))
        {
            sheet.Block(new LabelBox(view.ToPixel(ClothArea.Read(mark.At)), 7, 7));
        }
    }

    /// <summary>Puts the names beside feeds, vents and gaps, outside the cloth where there is room.</summary>
    internal static void PlaceNames(LabelSheet sheet, InfusionPlan plan, PanelView view, ClothArea cloth)
    {
        var named = plan.Feeds.Select(feed => (Text: $"feed {feed.Name}", feed.Path, Width: LineSigns.Width(feed, view)))
            .Concat(plan.Vents.Select(vent => (Text: $"vent {vent.Name}", vent.Path, Width: LineSigns.Width(vent, view))))
            .Concat(plan.Gaps.Select(gap => (Text: $"gap {gap.Name}", gap.Path, Width: LayUpSigns.GapWidth)));
        foreach (var (text, path, width) in named)
        {
            CalloutPlacer.Put(
                sheet, text, Anchors(LineSigns.Line(path, view)), width / 2 + 5, 30, box => CostOfCloth(box, view, cloth), leader: false);
        }
    }

    /// <summary>What it costs a text to lie on the cloth [px of distance].</summary>
    internal static float CostOfCloth(LabelBox box, PanelView view, ClothArea cloth) =>
        box.Corners().Append(box.Centre).Count(corner => cloth.Contains(view.ToSpot(corner))) * 5;

    /// <summary>Whether a zone covers only a part, so that its border is drawn.</summary>
    internal static bool ShowsBorder(Zone zone) => zone.Area is { Points.Count: > 2 };

    /// <summary>The border of a zone, faintly.</summary>
    internal static void ZoneBorder(SKCanvas canvas, SKPath border)
    {
        using var casing = Theme.Stroke(Theme.Paper.WithAlpha(150), 2.6f);
        using var stroke = Theme.Stroke(Theme.Ink.WithAlpha(190), 1.1f, 5, 5);
        canvas.DrawPath(border, casing);
        canvas.DrawPath(border, stroke);
    }

    private static void Zones(SKCanvas canvas, InfusionPlan plan, PanelView view, SKPath cloth)
    {
        canvas.Save();
        canvas.ClipPath(cloth, SKClipOperation.Intersect, true);
        foreach (var zone in plan.Preform.Zones.Where(ShowsBorder))
        {
            using var border = view.ToPath([zone.Area.Points.Select(ClothArea.Read)]);
            ZoneBorder(canvas, border);
        }

        canvas.Restore();
    }

    private static SKPoint[] Anchors(IReadOnlyList<SKPoint> line)
    {
        if (line.Count == 1)
        {
            return [line[0]];
        }

        // The middles of the longest piece first: a name reads best beside the middle of its line.
        var pieces = Enumerable.Range(0, line.Count - 1).OrderByDescending(i => SKPoint.Distance(line[i], line[i + 1]));
        return [.. pieces.SelectMany(i => NameShares.Select(share => Between(line[i], line[i + 1], share)))];
    }

    private static SKPoint Between(SKPoint from, SKPoint to, float share) =>
        new(from.X + (to.X - from.X) * share, from.Y + (to.Y - from.Y) * share);
}

using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Panels;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Checks that feeds, vents and gaps lie on the cloth, feeds and vents apart from each other.</summary>
internal static class LineCheck
{
    /// <summary>Checks the feeds, vents and gaps.</summary>
    public static void Run(InfusionPlan plan, Region region, RegionLocator locator, FaultList faults, List<string> warnings)
    {
        var places = new LinePlaces(region, locator, faults, warnings);
        var feeds = new List<DrawnLine>();
        var vents = new List<DrawnLine>();
        for (int k = 0; k < plan.Feeds.Count; k++)
            if (Draw(plan.Feeds[k].Path, plan.Feeds[k].Name, plan.Feeds[k].ContactWidthMm, "feed", $"feeds[{k}]", faults) is DrawnLine line) feeds.Add(line);
        for (int k = 0; k < plan.Vents.Count; k++)
            if (Draw(plan.Vents[k].Path, plan.Vents[k].Name, plan.Vents[k].ContactWidthMm, "vent", $"vents[{k}]", faults) is DrawnLine line) vents.Add(line);

        var gaps = new List<DrawnLine>();
        for (int k = 0; k < plan.Gaps.Count; k++)
            if (DrawGap(plan, k, faults) is DrawnLine line) gaps.Add(line);

        foreach (DrawnLine line in feeds.Concat(vents).Concat(gaps)) places.Check(line);
        foreach (DrawnLine vent in vents)
            foreach (DrawnLine feed in feeds)
                CheckApart(feed, vent, faults, warnings);
    }

    /// <summary>Where a place off the cloth lies, for a sentence.</summary>
    public static string OutsideWhat(Region region, Point2 place)
    {
        for (int k = 0; k < region.Cutouts.Count; k++)
            if (new RingLocator(region.Cutouts[k]).Contains(place)) return $"inside preform.cutouts[{k}]";
        return "outside the cloth";
    }

    private static DrawnLine? Draw(V1.Path? path, string name, double widthMm, string what, string place, FaultList faults)
    {
        if (path is not { Points.Count: > 0 } || faults.HasUnder(place + ".path")) return null;
        LinePath drawn = PlanMapping.ToPath(path);
        if (drawn.IsFitting && path.Points.Count > 1)
        {
            string fitting = what == "gap" ? "" : "one point for a fitting, or ";
            faults.Add(place + ".path", $"{what} '{name}' is a line of no length: its {path.Points.Count} points are one. Give {fitting}two apart for a line.");
            return null;
        }

        if (PathOverlap.Find(drawn) is Point2 twice)
        {
            faults.Add(place + ".path", $"{what} '{name}' doubles back on itself at {RingCheck.Say(twice)}: part of it lies on another part. Draw each stretch once; a branch is a {what} of its own.");
            return null;
        }

        return new DrawnLine(name, what, place, drawn, UnitConversion.MetresFromMm(widthMm));
    }

    // The cloth beside a gap tells its height, so it must not be drawn farther off than the nearest square.
    private static DrawnLine? DrawGap(InfusionPlan plan, int index, FaultList faults)
    {
        V1.Gap gap = plan.Gaps[index];
        string place = $"gaps[{index}]";
        double widthMm = gap.HasWidthMm ? gap.WidthMm : 0, mostMm = plan.Resolution is { HasCellMm: true } ? 2 * plan.Resolution.CellMm : 0;
        if (gap.Path is not { Points.Count: 1 }) return Draw(gap.Path, gap.Name, Math.Min(widthMm, mostMm), "gap", place, faults) is DrawnLine line ? line with { StaysOnCloth = !gap.HasHeightMm } : null;
        if (!faults.HasUnder(place + ".path")) faults.Add(place + ".path", $"gap '{gap.Name}' has one point; a gap runs from place to place. Give at least two points.");
        return null;
    }

    private static void CheckApart(DrawnLine feed, DrawnLine vent, FaultList faults, List<string> warnings)
    {
        (double distance, Point2 at) = PathDistance.Between(feed.Path, vent.Path);
        double reach = (feed.Path.IsFitting ? feed.ContactWidth / 2 : 0) + (vent.Path.IsFitting ? vent.ContactWidth / 2 : 0);
        if (distance <= Math.Max(reach, UnitConversion.MetresFromMm(PlanLimits.TouchingMm)))
        {
            faults.Add(vent.Place + ".path", $"vent '{vent.Name}' touches feed '{feed.Name}' at {RingCheck.Say(at)}: the resin would run straight into it. Keep cloth between them.");
        }
        else if (distance < (feed.ContactWidth + vent.ContactWidth) / 2)
        {
            warnings.Add($"vent '{vent.Name}' lies {Numbers.Say(Numbers.Rounded(UnitConversion.MmFromMetres(distance), 3))} mm from feed '{feed.Name}' at {RingCheck.Say(at)}, less than their widths: most of the resin may run straight into it.");
        }
    }
}

using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Checks that the parts without which nothing can be computed are there.</summary>
internal static class PresenceCheck
{
    /// <summary>Checks the parts of a plan.</summary>
    public static void Run(InfusionPlan plan, FaultList faults)
    {
        Need(plan.Preform, "preform", "give the outline and at least one zone");
        Need(plan.Resin, "resin", "give viscosityPaS, gelTimeMin and densityKgPerM3");
        Need(plan.Bag, "bag", "give pressureMbarAbs, the absolute pressure under the bag, or a pump with a leak");
        if (plan.Feeds.Count == 0 && !faults.HasUnder("feeds"))
            faults.Add("feeds", "feeds is empty: no resin comes in. Give at least one feed.");
        for (int k = 0; k < plan.Feeds.Count; k++) CheckPath(plan.Feeds[k].Path, $"feeds[{k}].path", faults);
        for (int k = 0; k < plan.Vents.Count; k++) CheckPath(plan.Vents[k].Path, $"vents[{k}].path", faults);
        for (int k = 0; k < plan.TimingMarks.Count; k++) Need(plan.TimingMarks[k].At, $"timingMarks[{k}].at", "give its place, for example { \"xMm\": 300, \"yMm\": 200 }");
        for (int k = 0; k < plan.Gaps.Count; k++) CheckPath(plan.Gaps[k].Path, $"gaps[{k}].path", faults);
        if (plan.Preform is Preform preform) CheckPreform(preform, faults);
        LayerPresence.Run(plan, faults);

        void Need(object? part, string path, string advice)
        {
            if (part is null && !faults.HasAt(path)) faults.Add(path, $"{path} is missing; {advice}.");
        }
    }

    private static void CheckPreform(Preform preform, FaultList faults)
    {
        const string Outline = "preform.outline", Zones = "preform.zones";
        if (preform.Outline is null && !faults.HasAt(Outline)) faults.Add(Outline, "preform.outline is missing; give the corners of the cloth as laid, flange included.");
        if (preform.Outline is not null) CheckRing(preform.Outline, Outline, faults);
        for (int k = 0; k < preform.Cutouts.Count; k++) CheckRing(preform.Cutouts[k], $"preform.cutouts[{k}]", faults);
        if (preform.Zones.Count == 0 && !faults.HasUnder(Zones))
            faults.Add(Zones, "preform.zones is empty: nothing is known of the cloth. Give at least one zone; without an area it covers the whole preform.");
        for (int k = 0; k < preform.Zones.Count; k++) CheckZone(preform.Zones[k], $"preform.zones[{k}]", faults);
    }

    private static void CheckZone(Zone zone, string path, FaultList faults)
    {
        string name = zone.Name.Length > 0 ? $"zone '{Json.ValueReader.Shorten(zone.Name)}'" : path;
        if (zone.Area is not null) CheckRing(zone.Area, path + ".area", faults);
        if (zone.LayUp is not null) LayUpCheck.Run(zone, path, name, faults);
        else if (zone.Permeability is null && !faults.HasUnder(path + ".permeability"))
            faults.Add(path + ".permeability", $"{name} has no permeability; give at least k1M2, for example {{ \"k1M2\": 1e-10 }}.");

        bool known = faults.HasAt(path + ".porosity") || faults.HasAt(path + ".fibreVolumeFraction");
        if (zone.HasPorosity && zone.HasFibreVolumeFraction)
            faults.Add(path + ".fibreVolumeFraction", $"{name} gives both porosity and fibreVolumeFraction; give one of them: porosity is 1 less the fibre volume fraction.");
        if (!zone.HasPorosity && !zone.HasFibreVolumeFraction && !known)
            faults.Add(path + ".porosity", $"{name} gives neither porosity nor fibreVolumeFraction; give one of them as a fraction, for example \"porosity\": 0.5.");
    }

    /// <summary>Checks that a ring has corners enough.</summary>
    public static void CheckRing(Ring ring, string path, FaultList faults)
    {
        if (ring.Points.Count >= 3 || faults.HasAt(path + ".points")) return;
        string advice = path.EndsWith(".area", StringComparison.Ordinal) ? "; leave area out for the whole preform" : "";
        faults.Add(path + ".points", $"{path} has {ring.Points.Count} corners; it needs at least 3{advice}.");
    }

    private static void CheckPath(V1.Path? path, string place, FaultList faults)
    {
        if (path is null && !faults.HasAt(place)) faults.Add(place, $"{place} is missing; give the points of the line, or one point for a fitting.");
        else if (path is { Points.Count: 0 } && !faults.HasAt(place + ".points"))
            faults.Add(place + ".points", $"{place} has no points; give the points of the line, or one point for a fitting.");
    }
}

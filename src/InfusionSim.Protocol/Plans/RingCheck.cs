using InfusionSim.Numerics.Geometry;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Units;
using Contract = InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Checks the outline, the cut-outs and the areas of zones as shapes.</summary>
internal static class RingCheck
{
    /// <summary>A panel of a few millimetres was drawn in metres.</summary>
    public static void CheckScale(PanelBox box, FaultList faults)
    {
        double widthMm = UnitConversion.MmFromMetres(box.Width), heightMm = UnitConversion.MmFromMetres(box.Height);
        double largest = Math.Max(widthMm, heightMm);
        if (largest is 0 or >= PlanLimits.SmallestPanelMm) return;
        string side = widthMm >= heightMm ? "wide" : "high";
        faults.Add("preform.outline", $"outline is {Numbers.Say(largest)} mm {side}; lengths are millimetres: {Numbers.Say(largest)} m is {Numbers.Say(1000 * largest)}.");
    }

    /// <summary>Whether outline and cut-outs can be cut into squares; a fault for everything that keeps them from it.</summary>
    public static bool CheckRegion(Region region, FaultList faults)
    {
        IReadOnlyList<RegionFault> found = RegionFaults.Find(region);
        foreach (RegionFault fault in found)
        {
            string path = PathOf(fault.RingIndex);
            faults.Add(path, Describe(fault, path, PathOf(fault.OtherRing)));
        }

        return found.Count == 0;
    }

    /// <summary>The areas of the zones as rings, null where a zone covers the whole preform or its area is at fault.</summary>
    public static IReadOnlyList<Ring?> CheckZones(Contract.Preform preform, FaultList faults)
    {
        var rings = new Ring?[preform.Zones.Count];
        for (int k = 0; k < rings.Length; k++)
            if (preform.Zones[k].Area is Contract.Ring area) rings[k] = CheckArea(area, $"preform.zones[{k}].area", faults);

        return rings;
    }

    /// <summary>An area as a ring, null when it is at fault.</summary>
    public static Ring? CheckArea(Contract.Ring area, string path, FaultList faults)
    {
        if (faults.HasUnder(path)) return null;
        Ring ring = PlanMapping.ToRing(area);
        IReadOnlyList<RegionFault> found = RegionFaults.Find(new Region(ring, []));
        foreach (RegionFault fault in found) faults.Add(path, Describe(fault, path, path));
        return found.Count == 0 ? ring : null;
    }

    /// <summary>A place as a plan writes it.</summary>
    public static string Say(Point2 place) => $"({Numbers.Say(UnitConversion.MmFromMetres(place.X))}, {Numbers.Say(UnitConversion.MmFromMetres(place.Y))}) mm";

    private static string PathOf(int ring) => ring == 0 ? "preform.outline" : $"preform.cutouts[{ring - 1}]";

    private static string Describe(RegionFault fault, string path, string other) => fault.Kind switch
    {
        RegionFaultKind.NotFinite => $"{path} has a corner that is no finite number; give a finite one.",
        RegionFaultKind.TooFewPoints => $"{path} has fewer than 3 different corners; it needs at least 3.",
        RegionFaultKind.NoArea => $"{path} encloses no area: its corners lie on one line. Give corners that go round it.",
        RegionFaultKind.CrossesItself => $"{path} crosses or touches itself at {Say(fault.Place)}; give its corners in order, once round.",
        RegionFaultKind.CutoutOutside => $"{path} lies outside the outline, at {Say(fault.Place)}; it must lie inside. Move it or take it out.",
        RegionFaultKind.CutoutMeetsOutline => $"{path} touches or crosses the outline at {Say(fault.Place)}; it must lie inside. Where cloth is cut away from the edge, draw the outline round it.",
        RegionFaultKind.CutoutsMeet => $"{path} meets {other} at {Say(fault.Place)}; cut-outs must lie apart. Draw the two as one.",
        _ => throw new ArgumentOutOfRangeException(nameof(fault), fault.Kind, "No such fault."),
    };
}

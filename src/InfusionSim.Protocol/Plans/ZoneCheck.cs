using InfusionSim.Numerics.Geometry;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;
using Ring = InfusionSim.Numerics.Geometry.Ring;

namespace InfusionSim.Protocol.Plans;

/// <summary>Checks that the lay-up is known everywhere.</summary>
internal static class ZoneCheck
{
    /// <summary>Checks that the zones cover the preform.</summary>
    public static void Run(Region region, IReadOnlyList<Ring?> zones, FaultList faults, List<string> warnings, Preform preform)
    {
        if (zones.Count == 0 || faults.HasUnder("preform.zones") && zones.Any(zone => zone is null)) return;
        int last = -1;
        for (int k = 0; k < zones.Count; k++)
            if (preform.Zones[k].Area is null) last = k;
        if (last > 0)
        {
            warnings.Add($"zone '{preform.Zones[last].Name}' covers the whole preform and stands after {last} other zone{(last == 1 ? "" : "s")}: where zones overlap the last one named decides alone, "
                + "so those before it change nothing. Name it first.");
        }

        if (last >= 0) return;
        UncoveredPart? gap = RegionCover.FindGap(region, [.. zones.OfType<Ring>()]);
        if (gap is null) return;
        faults.Add("preform.zones", $"preform.zones leave {Amounts.Area(UnitConversion.Mm2FromSquareMetres(gap.Area))} of the cloth without a lay-up, at {RingCheck.Say(gap.Place)} for one. "
            + "Widen a zone, or name first a zone without an area: it covers the rest.");
    }
}

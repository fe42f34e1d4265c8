using InfusionSim.Numerics.Geometry;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.V1;
using Ring = InfusionSim.Numerics.Geometry.Ring;

namespace InfusionSim.Protocol.Plans;

/// <summary>Checks what lies where on the drawing, and that its squares can be computed.</summary>
internal static class DrawingCheck
{
    /// <summary>Checks the drawing of a plan whose defaults are filled in; sets the size of the squares where the plan names none.</summary>
    /// <remarks>What cannot be looked at because of an earlier fault is passed over, so that one slip does not answer with ten faults.</remarks>
    public static void Run(InfusionPlan plan, FaultList faults, List<string> warnings)
    {
        if (plan.Preform is not { Outline: not null } preform || faults.HasUnder("preform.outline") || faults.HasUnder("preform.cutouts")) return;
        Region region = PlanMapping.RegionOf(preform);
        var box = PanelBox.Of(region.Outline);
        RingCheck.CheckScale(box, faults);
        bool isSound = RingCheck.CheckRegion(region, faults);
        IReadOnlyList<Ring?> zones = RingCheck.CheckZones(preform, faults);
        if (!isSound) return;

        ResolutionCheck.Run(plan, region, box, faults, warnings);
        if (faults.HasUnder("preform.outline")) return;
        if (!faults.HasUnder("resolution")) LineWidthCheck.Run(plan, faults);
        LayerAreas.Run(plan, region, faults, warnings);
        var locator = new RegionLocator(region);
        ZoneCheck.Run(region, zones, faults, warnings, preform);
        LineCheck.Run(plan, region, locator, faults, warnings);
        MarkCheck.Run(plan, region, locator, faults);
        NodeCheck.Run(plan, box, faults);
    }
}

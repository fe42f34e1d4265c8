using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Counts what a plan holds, before anything is done with it.</summary>
internal static class SizeCheck
{
    /// <summary>Whether the plan is small enough to be looked at; a fault for each count that is not.</summary>
    public static bool Passes(InfusionPlan plan, FaultList faults)
    {
        bool exceeded = false;
        Limit(plan.Feeds.Count + plan.Vents.Count, PlanLimits.MostLines, "feeds", "feeds and vents");
        Limit(plan.TimingMarks.Count, PlanLimits.MostMarks, "timingMarks", "timing marks");
        Limit(plan.Preform?.Zones.Count ?? 0, PlanLimits.MostZones, "preform.zones", "zones");
        Limit(plan.Preform?.Cutouts.Count ?? 0, PlanLimits.MostCutouts, "preform.cutouts", "cut-outs");
        Limit(plan.FlowMeshes.Count, PlanLimits.MostMeshes, "flowMeshes", "flow meshes");
        Limit(plan.Cores.Count, PlanLimits.MostCores, "cores", "cores");
        Limit(plan.Gaps.Count, PlanLimits.MostGaps, "gaps", "gaps");
        Limit(plan.Feeds.Sum(feed => feed.ClampSteps.Count) + plan.Vents.Sum(vent => vent.ClampSteps.Count), PlanLimits.MostClampSteps, "feeds", "clamp steps");
        Limit(plan.Bag?.Steps.Count ?? 0, PlanLimits.MostClampSteps, "bag.steps", "steps of the vacuum");
        Limit(plan.Pots.Count, PlanLimits.MostPots, "pots", "pots");
        Limit(plan.Resin?.ViscosityTemperatures.Count ?? 0, PlanLimits.MostRows, "resin.viscosityTemperatures", "rows of viscosity over temperature");
        Limit(plan.Resin?.ViscosityCurve?.Points.Count ?? 0, PlanLimits.MostReadings, "resin.viscosityCurve.points", "readings of viscosity over time");
        Limit(plan.Shop?.Temperatures.Count ?? 0, PlanLimits.MostRows, "shop.temperatures", "temperatures of the shop");
        for (int k = 0; k < Math.Min(plan.Preform?.Zones.Count ?? 0, PlanLimits.MostZones); k++)
            Limit(plan.Preform!.Zones[k].LayUp?.Plies.Count ?? 0, PlanLimits.MostPlies, $"preform.zones[{k}].layUp.plies", $"entries in the lay-up of zone {k}");
        Limit(CornersOf(plan), PlanLimits.MostCorners, "preform.outline", "corners in outline, cut-outs, zones, layers and lines");
        return !exceeded;

        void Limit(int count, int most, string path, string what)
        {
            if (count <= most) return;
            exceeded = true;
            faults.Add(path, $"The plan has {Numbers.Count(count)} {what}; at most {Numbers.Count(most)} are computed.", ErrorReason.TooLarge);
        }
    }

    private static int CornersOf(InfusionPlan plan) =>
        (plan.Preform?.Outline?.Points.Count ?? 0)
        + (plan.Preform?.Cutouts.Sum(ring => ring.Points.Count) ?? 0)
        + (plan.Preform?.Zones.Sum(zone => zone.Area?.Points.Count ?? 0) ?? 0)
        + plan.Feeds.Sum(feed => feed.Path?.Points.Count ?? 0)
        + plan.Vents.Sum(vent => vent.Path?.Points.Count ?? 0)
        + plan.Gaps.Sum(gap => gap.Path?.Points.Count ?? 0)
        + plan.FlowMeshes.Sum(mesh => mesh.Area?.Points.Count ?? 0)
        + plan.Cores.Sum(core => core.Area?.Points.Count ?? 0);
}

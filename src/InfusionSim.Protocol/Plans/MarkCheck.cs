using InfusionSim.Numerics.Geometry;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Checks that timing marks lie on the cloth.</summary>
internal static class MarkCheck
{
    /// <summary>Checks the timing marks.</summary>
    public static void Run(InfusionPlan plan, Region region, RegionLocator locator, FaultList faults)
    {
        for (int k = 0; k < plan.TimingMarks.Count; k++)
        {
            string path = $"timingMarks[{k}].at";
            if (plan.TimingMarks[k].At is not Point at || faults.HasUnder(path)) continue;
            Point2 place = PlanMapping.ToPoint(at);
            if (locator.Contains(place)) continue;
            double distanceMm = UnitConversion.MmFromMetres(locator.DistanceToEdge(place));
            if (distanceMm <= PlanLimits.TouchingMm) continue;
            faults.Add(path, $"timing mark '{plan.TimingMarks[k].Name}' at {RingCheck.Say(place)} lies {Numbers.Say(Numbers.Rounded(distanceMm, 3))} mm {LineCheck.OutsideWhat(region, place)}; "
                + $"no resin passes there. The nearest cloth is at {RingCheck.Say(locator.NearestOnEdge(place))}.");
        }
    }
}

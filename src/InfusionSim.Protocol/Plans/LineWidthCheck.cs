using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Checks that bores and gaps are narrow beside the squares: they are computed as lines, not as areas.</summary>
internal static class LineWidthCheck
{
    /// <summary>Checks a plan whose size of squares is known.</summary>
    public static void Run(InfusionPlan plan, FaultList faults)
    {
        double cellMm = plan.Resolution.CellMm;
        for (int k = 0; k < plan.Feeds.Count; k++)
            if (plan.Feeds[k].HasBoreMm) Check(plan.Feeds[k].BoreMm, $"feeds[{k}].boreMm", "or leave boreMm out: so wide a line loses hardly any pressure");
        for (int k = 0; k < plan.Vents.Count; k++)
            if (plan.Vents[k].HasBoreMm) Check(plan.Vents[k].BoreMm, $"vents[{k}].boreMm", "or leave boreMm out: so wide a line loses hardly any vacuum");
        for (int k = 0; k < plan.Gaps.Count; k++)
            if (plan.Gaps[k].HasWidthMm) Check(plan.Gaps[k].WidthMm, $"gaps[{k}].widthMm", "or draw it as a zone of its own");

        void Check(double widthMm, string path, string otherwise)
        {
            if (!(widthMm > PlanLimits.WidestLineSquares * cellMm * (1 + 1e-9)) || faults.HasAt(path)) return;
            double wantedMm = TidyUp(widthMm / PlanLimits.WidestLineSquares);
            faults.Add(path, $"{path} is {Numbers.Say(widthMm)} mm, {Numbers.Say(Numbers.Rounded(widthMm / cellMm, 2))} squares of {Numbers.Say(cellMm)} mm: an area, not a line; it must be at most {Numbers.Say(PlanLimits.WidestLineSquares * cellMm)} mm. "
                + $"Take squares of {Numbers.Say(wantedMm)} mm or more (resolution.cellMm), {otherwise}.");
        }
    }

    // Rounded up to two figures, so that what is advised is let through.
    private static double TidyUp(double millimetres)
    {
        double step = Math.Pow(10, Math.Floor(Math.Log10(millimetres)) - 1);
        return UnitConversion.Kept(step * Math.Ceiling(millimetres / step - 1e-9));
    }
}

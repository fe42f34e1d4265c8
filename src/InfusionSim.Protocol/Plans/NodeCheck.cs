using InfusionSim.Physics.Layers;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Checks that squares times layers can be computed.</summary>
internal static class NodeCheck
{
    /// <summary>Checks a plan whose size of squares is known.</summary>
    public static void Run(InfusionPlan plan, PanelBox box, FaultList faults)
    {
        // Only what has no fault can be laid out in layers.
        if (!faults.IsEmpty) return;
        int layers = PanelLayers.Of(PlanMapping.ToPanel(plan)).Layers.Count;
        if (layers == 1) return;
        double squares = box.SquaresOf(UnitConversion.MetresFromMm(plan.Resolution.CellMm));
        if (squares * layers <= PlanLimits.MostNodes) return;
        double cellMm = plan.Resolution.CellMm;
        double wantedMm = cellMm * Math.Sqrt(squares * layers / PlanLimits.MostNodes);
        double step = Math.Pow(10, Math.Floor(Math.Log10(wantedMm)) - 1);
        wantedMm = UnitConversion.Kept(step * Math.Ceiling(wantedMm / step));
        while (box.SquaresOf(UnitConversion.MetresFromMm(wantedMm)) * layers > PlanLimits.MostNodes) wantedMm += step;
        faults.Add(
            "resolution",
            $"resolution asks for {Numbers.Count(squares)} squares in {layers} layers: {Numbers.Count(squares * layers)} places; at most {Numbers.Count(PlanLimits.MostNodes)} are computed. "
            + $"Take squares of {Numbers.Say(UnitConversion.Kept(wantedMm))} mm (cellMm) or fewer layers (subLayers).",
            ErrorReason.TooLarge);
    }
}

using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Checks what lies where on the drawing, and that its squares can be computed.</summary>
internal static class DrawingCheck
{
    /// <summary>Checks the drawing of a plan whose defaults are filled in; sets the size of the squares where the plan names none.</summary>
    public static void Run(InfusionPlan plan, FaultList faults, List<string> warnings)
    {
    }
}

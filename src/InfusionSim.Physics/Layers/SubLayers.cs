using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Layers;

/// <summary>How many sub-layers the laminate is cut into through its thickness.</summary>
/// <remarks>
/// One without a mesh or a core. Under a mesh at least three: cut into n, a laminate shows a lag that is about a tenth of 1/n too long (our own runs
/// against the closed form: 10, 4, 1.6, 0.5 % with 1, 2, 3, 5), so as many are taken as keep that below half a square, 0.2 ℓ/square, but no more than
/// four: 1 % of the lag is far below what is known of any cloth, and each layer costs as much as a panel of its own. With a core one more, and at
/// least one on each side of it. <see cref="Panel.SubLayers"/> decides instead where it is given.
/// </remarks>
public static class SubLayers
{
    private const int LeastUnderMesh = 3;
    private const int MostByDefault = 4;
    private const double LagErrorTimesCount = 0.1;

    /// <summary>Number of sub-layers of a panel [-].</summary>
    /// <param name="panel">The panel.</param>
    public static int CountFor(Panel panel)
    {
        ArgumentNullException.ThrowIfNull(panel);
        int sides = panel.Cores.Count > 0 ? 2 : 1;
        if (panel.SubLayers is int given) return Math.Max(given, sides);
        if (panel.FlowMeshes.Count == 0) return sides;
        double longest = MeshLags.Of(panel).Select(static lag => lag.Length).Where(double.IsFinite).DefaultIfEmpty(0).Max();
        double wanted = Math.Ceiling(2 * LagErrorTimesCount * longest / panel.CellSize);
        return (int)Math.Clamp(wanted, LeastUnderMesh, MostByDefault) + sides - 1;
    }
}

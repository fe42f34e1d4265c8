using InfusionSim.Numerics.Grids;
using InfusionSim.Physics.Layers;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Laminates;

/// <summary>How much of the cloth each zone decides.</summary>
public static class ZoneAreas
{
    /// <summary>Area of each zone where no later one lies on it, in the panel's order [m²].</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="cells">Its cells.</param>
    /// <param name="cancellation">Stops the work between squares.</param>
    public static IReadOnlyList<double> Of(Panel panel, CutCellGrid cells, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(panel);
        return [.. LayerCover.SeenOf(new Layer(LayerKind.Laminate, "laminate", panel.Zones), cells, cancellation).Select(static seen => seen.Sum())];
    }
}

using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Layers;

/// <summary>The lags to expect under the meshes of a panel.</summary>
public static class MeshLags
{
    /// <summary>The lag of each mesh over each zone, meshes in the panel's order, zones within them.</summary>
    /// <remarks>
    /// Directions are left out: √(K₁K₂) stands for the permeability in the plane. Peel ply between a bag-side mesh and the laminate is a resistance
    /// in series.
    /// </remarks>
    /// <param name="panel">The panel.</param>
    public static IEnumerable<MeshLag> Of(Panel panel)
    {
        ArgumentNullException.ThrowIfNull(panel);
        return panel.FlowMeshes.SelectMany(mesh => panel.Zones.Select(zone => Under(mesh, zone, mesh.Face == PanelFace.BagSide ? panel.PeelPly : null)));
    }

    /// <summary>The lag of a mesh over a zone.</summary>
    /// <param name="mesh">The mesh.</param>
    /// <param name="zone">The zone.</param>
    /// <param name="peelPly">What lies between them; null for nothing.</param>
    public static MeshLag Under(FlowMesh mesh, Zone zone, PeelPly? peelPly)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        ArgumentNullException.ThrowIfNull(zone);
        double resistance = zone.Thickness / zone.Permeability.K3, thickness = zone.Thickness, pores = zone.Porosity * zone.Thickness;
        if (peelPly is not null)
        {
            resistance += peelPly.Thickness / peelPly.Permeability.K3;
            thickness += peelPly.Thickness;
            pores += peelPly.Porosity * peelPly.Thickness;
        }

        return new(
            mesh.Thickness, InPlane(mesh.Permeability), mesh.Porosity, thickness, InPlane(zone.Permeability), thickness / resistance, pores / thickness);
    }

    private static double InPlane(Permeability permeability) => Math.Sqrt(permeability.K1 * permeability.K2);
}

using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Layers;

/// <summary>
/// The layers of a panel through its thickness, lowest (tool side) first: tool-side mesh, laminate with a core between its sub-layers, peel ply,
/// bag-side mesh.
/// </summary>
/// <remarks>
/// What a panel does not have makes no layer; one without mesh, core and peel ply is a single layer. All meshes of a side share one layer, as all cores do.
/// </remarks>
public sealed class PanelLayers
{
    private PanelLayers(IReadOnlyList<Layer> layers) => Layers = layers;

    /// <summary>The layers, lowest first.</summary>
    public IReadOnlyList<Layer> Layers { get; }

    /// <summary>Index of the lowest layer of laminate [-].</summary>
    public int LowestLaminate => IndexesOf(LayerKind.Laminate).First();

    /// <summary>Index of the uppermost layer of laminate [-].</summary>
    public int UppermostLaminate => IndexesOf(LayerKind.Laminate).Last();

    /// <summary>Number of sub-layers of laminate [-].</summary>
    public int SubLayerCount => IndexesOf(LayerKind.Laminate).Count();

    /// <summary>The layers of a panel.</summary>
    /// <param name="panel">The panel.</param>
    /// <exception cref="NotSupportedException">When two cores lie at different shares of the thickness.</exception>
    public static PanelLayers Of(Panel panel)
    {
        ArgumentNullException.ThrowIfNull(panel);
        List<Layer> layers = [];
        AddMeshes(layers, panel, PanelFace.ToolSide, LayerKind.ToolSideMesh, "mesh on the tool side");
        AddLaminate(layers, panel, SubLayers.CountFor(panel));
        if (panel.PeelPly is PeelPly peelPly)
            layers.Add(new(LayerKind.PeelPly, "peel ply", [new("peel ply", null, peelPly.Thickness, peelPly.Porosity, peelPly.Permeability)]));
        AddMeshes(layers, panel, PanelFace.BagSide, LayerKind.BagSideMesh, "mesh on the bag side");
        return new(layers);
    }

    private static void AddMeshes(List<Layer> layers, Panel panel, PanelFace face, LayerKind kind, string name)
    {
        Zone[] zones = [.. panel.FlowMeshes.Where(mesh => mesh.Face == face)
            .Select(mesh => new Zone(mesh.Name, mesh.Area, mesh.Thickness, mesh.Porosity, mesh.Permeability))];
        if (zones.Length > 0) layers.Add(new(kind, name, zones));
    }

    private static void AddLaminate(List<Layer> layers, Panel panel, int count)
    {
        if (panel.Cores.Count == 0)
        {
            AddSubLayers(layers, panel, count, 1, "laminate");
            return;
        }

        double share = panel.Cores[0].ToolSkinShare;
        if (panel.Cores.FirstOrDefault(core => core.ToolSkinShare != share) is Core other)
        {
            throw new NotSupportedException(
                $"Core '{other.Name}' lies above {other.ToolSkinShare:0.##} of the laminate's thickness, core '{panel.Cores[0].Name}' above {share:0.##}; "
                + "only cores at one share are computed so far.");
        }

        int below = Math.Clamp((int)Math.Round(count * share), 1, count - 1);
        AddSubLayers(layers, panel, below, share, "tool-side skin");
        Zone[] cores = [.. panel.Cores.Select(core => new Zone(core.Name, core.Area, core.Thickness, core.Porosity, core.Permeability))];
        layers.Add(new(LayerKind.Core, "core", cores));
        AddSubLayers(layers, panel, count - below, 1 - share, "bag-side skin");
    }

    private static void AddSubLayers(List<Layer> layers, Panel panel, int count, double share, string name)
    {
        double each = share / count;
        IReadOnlyList<Zone> zones = each == 1 ? panel.Zones : [.. panel.Zones.Select(zone => zone with { Thickness = zone.Thickness * each })];
        for (int k = 0; k < count; k++)
            layers.Add(new(LayerKind.Laminate, count == 1 ? name : $"{name}, sub-layer {k + 1} of {count}", zones) { ThicknessShare = each });
    }

    private IEnumerable<int> IndexesOf(LayerKind kind) => Enumerable.Range(0, Layers.Count).Where(layer => Layers[layer].Kind == kind);
}

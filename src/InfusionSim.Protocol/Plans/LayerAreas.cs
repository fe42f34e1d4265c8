using InfusionSim.Numerics.Geometry;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.V1;
using Ring = InfusionSim.Numerics.Geometry.Ring;

namespace InfusionSim.Protocol.Plans;

/// <summary>Checks where flow meshes and cores lie.</summary>
internal static class LayerAreas
{
    // Seams are drawn with rounded numbers; less than this share beside the cloth or on a neighbour is such a seam. Our choice.
    private const double SeamShare = 1e-4;

    private const int MostOverlapsTold = 3;

    private readonly record struct Layer(string What, string Name, string Group, Ring? Area);

    /// <summary>Checks the areas of all layers.</summary>
    public static void Run(InfusionPlan plan, Region region, FaultList faults, List<string> warnings)
    {
        List<Layer> layers = [];
        for (int k = 0; k < plan.FlowMeshes.Count; k++)
        {
            FlowMesh mesh = plan.FlowMeshes[k];
            string side = mesh.Face == PanelFace.ToolSide ? "flow meshes on the tool side" : "flow meshes on the bag side";
            if (AreaOf(mesh.Area, $"flowMeshes[{k}].area", "flow mesh", mesh.Name, region, faults, warnings) is Area sound) layers.Add(new("flow mesh", mesh.Name, side, sound.Ring));
        }

        for (int k = 0; k < plan.Cores.Count; k++)
        {
            Core core = plan.Cores[k];
            if (AreaOf(core.Area, $"cores[{k}].area", "core", core.Name, region, faults, warnings) is Area sound) layers.Add(new("core", core.Name, "cores", sound.Ring));
        }

        foreach (IGrouping<string, Layer> group in layers.GroupBy(layer => layer.Group)) TellOverlaps([.. group], warnings);
    }

    private readonly record struct Area(Ring? Ring);

    // Null when the area is at fault; an area without a ring is the whole preform.
    private static Area? AreaOf(V1.Ring? drawn, string path, string what, string name, Region region, FaultList faults, List<string> warnings)
    {
        if (drawn is null) return new Area(null);
        if (RingCheck.CheckArea(drawn, path, faults) is not Ring ring) return null;
        double inside = RegionOverlap.ShareInside(region, ring);
        if (inside < SeamShare)
        {
            faults.Add(path, $"{what} '{name}' lies beside the cloth: its area begins at {RingCheck.Say(ring.Corners[0])} and meets none of it. Move it onto the cloth, or leave area out for the whole preform.");
            return null;
        }

        if (inside < 1 - SeamShare)
            warnings.Add($"{what} '{name}' reaches beyond the cloth with {Words.Amounts.Percent(1 - inside)} of its area; what lies beside the cloth does not count.");
        return new Area(ring);
    }

    private static void TellOverlaps(Layer[] layers, List<string> warnings)
    {
        int told = 0;
        for (int last = 1; last < layers.Length; last++)
        {
            for (int first = 0; first < last && told < MostOverlapsTold; first++)
            {
                if (!Overlap(layers[first].Area, layers[last].Area)) continue;
                warnings.Add($"{layers[first].Group} '{layers[first].Name}' and '{layers[last].Name}' overlap; where they do the one named last, '{layers[last].Name}', decides alone.");
                told++;
            }
        }
    }

    private static bool Overlap(Ring? first, Ring? second) =>
        first is null || second is null || RegionOverlap.ShareInside(new Region(first, []), second) > SeamShare;
}

using InfusionSim.Plots.Panels;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Plots.Keys;

/// <summary>Which signs a panel picture uses.</summary>
internal static class PanelKey
{
    /// <summary>The signs in the order of the key.</summary>
    internal static IReadOnlyList<KeySign> Signs(InfusionPlan plan, bool drySpots, bool neverReached, bool last)
    {
        var signs = new List<KeySign>();
        Add(KeySign.Feed, plan.Feeds.Count > 0);
        Add(KeySign.Vent, plan.Vents.Any(vent => vent.Kind != VentKind.Membrane));
        Add(KeySign.Membrane, plan.Vents.Any(vent => vent.Kind == VentKind.Membrane && vent.Path.Points.Count > 1));
        Add(KeySign.MembraneFitting, plan.Vents.Any(vent => vent.Kind == VentKind.Membrane && vent.Path.Points.Count == 1));
        Add(KeySign.HoseJoint, plan.Feeds.Any(feed => feed.Hose is not null) || plan.Vents.Any(vent => vent.Hose is not null));
        Add(KeySign.LayUp, plan.Preform.Zones.Any(PanelPainter.ShowsBorder));
        Add(KeySign.Gap, plan.Gaps.Count > 0);
        Add(KeySign.Mesh, plan.FlowMeshes.Any(mesh => mesh.Face != PanelFace.ToolSide));
        Add(KeySign.MeshOnToolSide, plan.FlowMeshes.Any(mesh => mesh.Face == PanelFace.ToolSide));
        Add(KeySign.Core, plan.Cores.Count > 0);
        Add(KeySign.Fibres, plan.Preform.Zones.Any(zone => FibreDirection.Of(zone) is not null));
        Add(KeySign.TimingMark, plan.TimingMarks.Count > 0);
        Add(KeySign.LastPlace, last);
        Add(KeySign.DrySpot, drySpots);
        Add(KeySign.NeverReached, neverReached);
        return signs;

        void Add(KeySign sign, bool isUsed)
        {
            if (isUsed)
            {
                signs.Add(sign);
            }
        }
    }
}

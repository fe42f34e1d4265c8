using InfusionSim.Physics.Cloths;
using InfusionSim.Physics.Laminates;
using InfusionSim.Physics.Layers;
using InfusionSim.Physics.Panels;
using InfusionSim.Protocol.Units;
using Contract = InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Turns the layers of a checked plan into what the physics takes.</summary>
internal static class LayerMapping
{
    /// <summary>A flow mesh.</summary>
    public static FlowMesh ToMesh(Contract.FlowMesh mesh) => new(
        mesh.Name,
        mesh.Area is null ? null : PlanMapping.ToRing(mesh.Area),
        mesh.Face switch
        {
            Contract.PanelFace.ToolSide => PanelFace.ToolSide,
            Contract.PanelFace.BagSide or Contract.PanelFace.Unspecified => PanelFace.BagSide,
            _ => throw new ArgumentException($"{mesh.Face} is no side of a panel.", nameof(mesh)),
        },
        UnitConversion.MetresFromMm(mesh.ThicknessMm),
        mesh.Porosity,
        ToPermeability(mesh.Permeability));

    /// <summary>The peel ply.</summary>
    public static PeelPly ToPeelPly(Contract.PeelPly ply) =>
        new(UnitConversion.MetresFromMm(ply.ThicknessMm), ply.Porosity, ToPermeability(ply.Permeability));

    /// <summary>A core; grooves and holes are turned into what they come to.</summary>
    public static Core ToCore(Contract.Core core)
    {
        Numerics.Geometry.Ring? area = core.Area is null ? null : PlanMapping.ToRing(core.Area);
        double thickness = UnitConversion.MetresFromMm(core.ThicknessMm);
        return core.Permeability is null
            ? CutCore.Of(core.Name, area, core.ToolSkinFraction, thickness, ToGrooves(core.Grooves), ToHoles(core.Holes))
            : new(core.Name, area, core.ToolSkinFraction, thickness, core.Porosity, ToPermeability(core.Permeability));
    }

    private static CoreGrooves? ToGrooves(Contract.Grooves? grooves) => grooves is null
        ? null
        : new(
            UnitConversion.MetresFromMm(grooves.WidthMm),
            UnitConversion.MetresFromMm(grooves.DepthMm),
            UnitConversion.MetresFromMm(grooves.PitchMm),
            UnitConversion.RadiansFromDeg(grooves.AngleDeg),
            grooves.BothWays);

    /// <summary>A zone; a lay-up is turned into what its plies come to.</summary>
    public static Zone ToZone(Contract.Zone zone)
    {
        Numerics.Geometry.Ring? area = zone.Area is null ? null : PlanMapping.ToRing(zone.Area);
        double porosity = zone.HasPorosity ? zone.Porosity : 1 - zone.FibreVolumeFraction;
        if (zone.LayUp is null) return new(zone.Name, area, UnitConversion.MetresFromMm(zone.ThicknessMm), porosity, ToPermeability(zone.Permeability));
        LaidPlies laid = LaidPlies.Of([.. zone.LayUp.Plies.Select(ToPly)]);
        return new(zone.Name, area, laid.Thickness, porosity, laid.Permeability) { Fibres = FibresOf(zone.LayUp) };
    }

    // A lay-up of which one ply is not known is not known.
    private static FibreWeight[] FibresOf(Contract.LayUp layUp)
    {
        FibreWeight[] known = [.. layUp.Plies.Select(PlyThickness.FibresOf).OfType<FibreWeight>()];
        return known.Length == layUp.Plies.Count ? known : [];
    }

    /// <summary>A permeability whose defaults are filled in.</summary>
    public static Permeability ToPermeability(Contract.Permeability permeability) => new(
        permeability.K1M2, permeability.K2M2, permeability.K3M2, UnitConversion.RadiansFromDeg(permeability.AngleDeg));

    private static Ply ToPly(Contract.Ply ply) => new(
        UnitConversion.MetresFromMm(ply.ThicknessMm),
        ToPermeability(ply.Permeability) with { Angle = UnitConversion.RadiansFromDeg(ply.AngleDeg) },
        ply.Count);

    private static CoreHoles? ToHoles(Contract.Holes? holes) =>
        holes is null ? null : new(UnitConversion.MetresFromMm(holes.DiameterMm), UnitConversion.MetresFromMm(holes.PitchMm));
}

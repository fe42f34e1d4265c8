using InfusionSim.Physics.Laminates;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>How thick a ply is: as the plan says, or as the weight of its fibre makes it.</summary>
internal static class PlyThickness
{
    /// <summary>The weight of a ply's fibre; null where the plan does not give it.</summary>
    public static FibreWeight? FibresOf(Ply ply) => ply is { ArealWeightGPerM2: > 0, FibreDensityKgPerM3: > 0 }
        ? new FibreWeight(UnitConversion.KgPerM2FromGPerM2(ply.ArealWeightGPerM2), ply.FibreDensityKgPerM3, ply.HasCount ? ply.Count : 1)
        : null;

    /// <summary>Thickness of one ply from the weight of its fibre [mm]; null where the plan does not say enough.</summary>
    /// <param name="ply">The ply.</param>
    /// <param name="zone">The zone it lies in, for its fibre volume fraction.</param>
    public static double? FromFibresMm(Ply ply, Zone zone)
    {
        double fibre = zone.HasFibreVolumeFraction ? zone.FibreVolumeFraction : zone.HasPorosity ? 1 - zone.Porosity : double.NaN;
        return fibre is > 0 and < 1 && FibresOf(ply) is FibreWeight weight ? UnitConversion.MmFromMetres(weight.PlyThickness(fibre)) : null;
    }

    /// <summary>Thickness of one ply [mm]; null where the plan does not say enough.</summary>
    /// <param name="ply">The ply.</param>
    /// <param name="zone">The zone it lies in.</param>
    public static double? OfMm(Ply ply, Zone zone) => ply.HasThicknessMm ? ply.ThicknessMm : FromFibresMm(ply, zone);
}

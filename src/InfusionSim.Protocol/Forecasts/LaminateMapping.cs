using InfusionSim.Numerics.Grids;
using InfusionSim.Physics.Laminates;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.Units;
using Contract = InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Forecasts;

/// <summary>Says what the zones come to whose fibre weight is known.</summary>
internal static class LaminateMapping
{
    /// <summary>Adds the zones and, where all are known, the weight of the whole lay-up.</summary>
    /// <param name="answer">Takes them.</param>
    /// <param name="inputs">The plan in SI.</param>
    /// <param name="cells">The cells it was computed on.</param>
    public static void Add(Contract.FillForecast answer, FillInputs inputs, CutCellGrid cells)
    {
        Laminate?[] laminates = [.. inputs.Panel.Zones.Select(zone => Laminate.Of(zone, inputs.Resin.Density))];
        if (laminates.All(laminate => laminate is null)) return;
        IReadOnlyList<double> areas = ZoneAreas.Of(inputs.Panel, cells);
        for (int zone = 0; zone < laminates.Length; zone++)
            if (laminates[zone] is Laminate laminate) answer.Laminates.Add(ToContract(inputs.Panel.Zones[zone].Name, laminate, areas[zone]));
        if (laminates.Zip(areas).All(one => one.First is not null || one.Second == 0))
            answer.LaminateWeightG = UnitConversion.GramsFromKilograms(laminates.Zip(areas).Sum(one => one.First is Laminate laminate ? laminate.Mass * one.Second : 0));
    }

    private static Contract.LaminateForecast ToContract(string zone, Laminate laminate, double area) => new()
    {
        Zone = zone,
        ThicknessMm = UnitConversion.MmFromMetres(laminate.Thickness),
        FibreGPerM2 = UnitConversion.GPerM2FromKgPerM2(laminate.FibreMass),
        ResinGPerM2 = UnitConversion.GPerM2FromKgPerM2(laminate.ResinMass),
        FibreVolumeFraction = UnitConversion.Kept(laminate.FibreVolumeFraction),
        FibreWeightFraction = UnitConversion.Kept(laminate.FibreWeightFraction),
        DensityKgPerM3 = UnitConversion.Kept(laminate.Density),
        AreaMm2 = UnitConversion.Mm2FromSquareMetres(area),
        WeightG = UnitConversion.GramsFromKilograms(laminate.Mass * area),
    };
}

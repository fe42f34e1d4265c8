using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Json;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Checks that the plies of a zone can be put together, and that the zone says nothing against them.</summary>
internal static class LayUpCheck
{
    /// <summary>How far a zone's own thickness may be from that of its plies [mm]: what rounding on a drawing does.</summary>
    private const double RoundedMm = 0.01;

    /// <summary>How far the thickness of a ply may be from what its fibre makes it, as a share of it [-]: what rounding on a data sheet does (our own judgement).</summary>
    private const double RoundedShare = 0.02;

    /// <summary>Thinnest lay-up [mm]; the same as for a zone without plies.</summary>
    private const double ThinnestMm = 0.05;

    /// <summary>Thickest lay-up [mm]; the same as for a zone without plies.</summary>
    private const double ThickestMm = 200;

    /// <summary>Checks the lay-up of a zone.</summary>
    /// <param name="zone">A zone that has one.</param>
    /// <param name="path">Where the zone stands.</param>
    /// <param name="name">What a message calls the zone.</param>
    /// <param name="faults">Takes the faults.</param>
    public static void Run(Zone zone, string path, string name, FaultList faults)
    {
        string layUp = path + ".layUp";
        if (zone.Permeability is not null)
            faults.Add(path + ".permeability", $"{name} gives both permeability and layUp; give one of them: the plies make the zone's permeability.");
        if (zone.LayUp.Plies.Count == 0 && !faults.HasUnder(layUp))
            faults.Add(layUp + ".plies", $"{name} has a layUp without plies; list them from the tool side to the bag side, or leave layUp out.");
        for (int k = 0; k < zone.LayUp.Plies.Count; k++) CheckPly(zone.LayUp.Plies[k], zone, $"{layUp}.plies[{k}]", faults);
        if (zone.LayUp.Plies.Count > 0 && !faults.HasUnder(layUp)) CheckThickness(zone, path, name, faults);
    }

    private static void CheckPly(Ply ply, Zone zone, string path, FaultList faults)
    {
        string cloth = ply.Cloth.Length > 0 ? $"{path} ('{ValueReader.Shorten(ply.Cloth)}')" : path;
        if (ply.Permeability is null && !faults.HasUnder(path + ".permeability"))
            faults.Add(path + ".permeability", $"{cloth} has no permeability; give that of the ply along and across its own direction, for example {{ \"k1M2\": 2e-10, \"k2M2\": 1e-10 }}.");
        if (ply.Permeability is { HasAngleDeg: true, AngleDeg: not 0 })
            faults.Add(path + ".permeability.angleDeg", $"{cloth} is turned twice: by its angleDeg and by permeability.angleDeg, {Numbers.Say(ply.Permeability.AngleDeg)}°. Write the angle into angleDeg of the ply alone.");
        CheckFibres(ply, zone, path, cloth, faults);
    }

    private static void CheckFibres(Ply ply, Zone zone, string path, string cloth, FaultList faults)
    {
        if (ply.HasArealWeightGPerM2 && !ply.HasFibreDensityKgPerM3 && !faults.HasAt(path + ".fibreDensityKgPerM3"))
            faults.Add(path + ".fibreDensityKgPerM3", $"{cloth} has the weight of its fibre, but not the density; give fibreDensityKgPerM3 too, for example 2560 for glass or 1780 for carbon.");
        if (ply.HasFibreDensityKgPerM3 && !ply.HasArealWeightGPerM2 && !faults.HasAt(path + ".arealWeightGPerM2"))
            faults.Add(path + ".arealWeightGPerM2", $"{cloth} has the density of its fibre, but not the weight; give arealWeightGPerM2 too, as the roll says.");
        if (!ply.HasThicknessMm || PlyThickness.FromFibresMm(ply, zone) is not double fromFibres) return;
        if (Math.Abs(ply.ThicknessMm - fromFibres) <= Math.Max(RoundedMm, RoundedShare * fromFibres)) return;
        faults.Add(
            path + ".thicknessMm", $"thicknessMm of {cloth} is {Numbers.Say(ply.ThicknessMm)} mm, but {Numbers.Say(ply.ArealWeightGPerM2)} g/m² of fibre come to {Numbers.Figures(fromFibres, 3)} mm "
            + "at the zone's fibre volume fraction. Leave thicknessMm out, or put weight, density or fraction right.");
    }

    private static void CheckThickness(Zone zone, string path, string name, FaultList faults)
    {
        double pliesMm = zone.LayUp.Plies.Sum(ply => (ply.HasCount ? ply.Count : 1) * (PlyThickness.OfMm(ply, zone) ?? double.NaN));
        if (pliesMm is > 0 and < ThinnestMm)
            faults.Add(path + ".layUp.plies", $"the plies of {name} are only {Numbers.Say(pliesMm)} mm thick together; at least {Numbers.Say(ThinnestMm)} mm are computed. Look at arealWeightGPerM2 and fibreDensityKgPerM3.");
        else if (pliesMm > ThickestMm)
            faults.Add(path + ".layUp.plies", $"the plies of {name} are {Numbers.Say(pliesMm)} mm thick together; at most {Numbers.Say(ThickestMm)} mm are computed. thicknessMm and arealWeightGPerM2 are those of one ply.");
        else if (zone.HasThicknessMm && double.IsFinite(zone.ThicknessMm) && Math.Abs(zone.ThicknessMm - pliesMm) > RoundedMm)
            faults.Add(path + ".thicknessMm", $"thicknessMm of {name} is {Numbers.Say(zone.ThicknessMm)} mm, but its plies are {Numbers.Say(pliesMm)} mm thick together. Leave it out: the plies decide.");
    }
}

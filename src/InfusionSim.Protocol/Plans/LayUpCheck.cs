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
        for (int k = 0; k < zone.LayUp.Plies.Count; k++) CheckPly(zone.LayUp.Plies[k], $"{layUp}.plies[{k}]", faults);
        if (zone.LayUp.Plies.Count > 0 && !faults.HasUnder(layUp)) CheckThickness(zone, path, name, faults);
    }

    private static void CheckPly(Ply ply, string path, FaultList faults)
    {
        string cloth = ply.Cloth.Length > 0 ? $"{path} ('{ValueReader.Shorten(ply.Cloth)}')" : path;
        if (ply.Permeability is null && !faults.HasUnder(path + ".permeability"))
            faults.Add(path + ".permeability", $"{cloth} has no permeability; give that of the ply along and across its own direction, for example {{ \"k1M2\": 2e-10, \"k2M2\": 1e-10 }}.");
        if (ply.Permeability is { HasAngleDeg: true, AngleDeg: not 0 })
            faults.Add(path + ".permeability.angleDeg", $"{cloth} is turned twice: by its angleDeg and by permeability.angleDeg, {Numbers.Say(ply.Permeability.AngleDeg)}°. Write the angle into angleDeg of the ply alone.");
    }

    private static void CheckThickness(Zone zone, string path, string name, FaultList faults)
    {
        double pliesMm = zone.LayUp.Plies.Sum(ply => (ply.HasCount ? ply.Count : 1) * ply.ThicknessMm);
        if (pliesMm > ThickestMm)
            faults.Add(path + ".layUp.plies", $"the plies of {name} are {Numbers.Say(pliesMm)} mm thick together; at most {Numbers.Say(ThickestMm)} mm are computed. thicknessMm is that of one ply, in millimetres.");
        else if (zone.HasThicknessMm && double.IsFinite(zone.ThicknessMm) && Math.Abs(zone.ThicknessMm - pliesMm) > RoundedMm)
            faults.Add(path + ".thicknessMm", $"thicknessMm of {name} is {Numbers.Say(zone.ThicknessMm)} mm, but its plies are {Numbers.Say(pliesMm)} mm thick together. Leave it out: the plies decide.");
    }
}

using InfusionSim.Cli.Commands;
using InfusionSim.Protocol.Json;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Cli.Plans;

/// <summary>Reads a resin card from its file.</summary>
public static class CardFile
{
    /// <summary>Reads a card.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="CommandException">When there is no such file, or it cannot be read.</exception>
    public static Resin Read(string path)
    {
        JsonReading<Resin> reading = MessageReader.Read<Resin>(PlanFile.ReadBytes(path, "A card holds what stands under `resin` in a plan."), "resin card");
        if (reading.Faults.Count > 0) throw PlanFile.Refuse(path, reading.Faults);
        return reading.Message;
    }
}

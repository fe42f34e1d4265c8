using System.Text;
using InfusionSim.Protocol.Json;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Plan files: the proto-JSON of a plan, read strictly.</summary>
public static class PlanJson
{
    /// <summary>Reads a plan; what is out of range is for the checker to find.</summary>
    /// <param name="utf8">The bytes of the file.</param>
    public static JsonReading<InfusionPlan> Read(ReadOnlyMemory<byte> utf8) => MessageReader.Read<InfusionPlan>(utf8, "plan");

    /// <summary>Reads a plan; what is out of range is for the checker to find.</summary>
    /// <param name="text">The text of the file.</param>
    public static JsonReading<InfusionPlan> Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Read(Encoding.UTF8.GetBytes(text));
    }

    /// <summary>Writes a plan for a file, over several lines, ending with a line break.</summary>
    /// <param name="plan">The plan; only what is set is written.</param>
    public static string Write(InfusionPlan plan) => MessageWriter.WriteGiven(plan) + "\n";
}

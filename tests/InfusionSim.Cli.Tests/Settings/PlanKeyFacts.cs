using Google.Protobuf.Reflection;
using InfusionSim.Cli.Quantities;
using InfusionSim.Cli.Settings;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Cli.Tests.Settings;

/// <summary>What the contract says of a key of the plan.</summary>
internal static class PlanKeyFacts
{
    public static string UnitOf(string path) => KeyUnit.Of(path[(path.LastIndexOf('.') + 1)..]).Symbol;

    public static bool IsNumber(string path)
    {
        MessageDescriptor message = InfusionPlan.Descriptor;
        foreach (KeyStep step in KeyStep.Split(path))
        {
            FieldDescriptor field = PlanKeys.Find(message, step.Name)!;
            if (field.FieldType != FieldType.Message) return field.FieldType == FieldType.Double;
            message = field.MessageType;
        }

        return false;
    }
}

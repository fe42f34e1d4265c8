using System.Reflection;
using System.Reflection.Emit;

namespace InfusionSim.Architecture.Tests.Metadata;

/// <summary>What follows each instruction of a method body, from the runtime's own table of instructions.</summary>
internal static class OperandSizes
{
    private static readonly Dictionary<int, OperandType> Operands = typeof(OpCodes)
        .GetFields(BindingFlags.Public | BindingFlags.Static)
        .Select(field => (OpCode)field.GetValue(null)!)
        .ToDictionary(code => (int)(ushort)code.Value, code => code.OperandType);

    /// <summary>Kind of operand of an instruction.</summary>
    public static OperandType Of(int instruction) => Operands[instruction];

    /// <summary>Bytes of an operand; a switch brings its own count.</summary>
    public static int Bytes(OperandType operand) => operand switch
    {
        OperandType.InlineNone => 0,
        OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar => 1,
        OperandType.InlineVar => 2,
        OperandType.InlineI8 or OperandType.InlineR => 8,
        _ => 4,
    };

    /// <summary>Whether the operand names a type or a member.</summary>
    public static bool IsToken(OperandType operand) =>
        operand is OperandType.InlineField or OperandType.InlineMethod or OperandType.InlineTok or OperandType.InlineType or OperandType.InlineSig;
}

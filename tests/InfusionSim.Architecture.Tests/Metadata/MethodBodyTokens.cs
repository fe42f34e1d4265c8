using System.Reflection.Emit;
using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;

namespace InfusionSim.Architecture.Tests.Metadata;

/// <summary>Lists the types and members that the instructions of a method body name.</summary>
internal static class MethodBodyTokens
{
    private const int TwoByteInstruction = 0xFE;

    public static IEnumerable<EntityHandle> Of(MethodBodyBlock body)
    {
        List<EntityHandle> tokens = [];
        BlobReader code = body.GetILReader();
        while (code.RemainingBytes > 0)
        {
            int instruction = code.ReadByte();
            if (instruction == TwoByteInstruction) instruction = instruction << 8 | code.ReadByte();
            OperandType operand = OperandSizes.Of(instruction);
            if (OperandSizes.IsToken(operand)) tokens.Add(MetadataTokens.EntityHandle(code.ReadInt32()));
            else Skip(ref code, operand);
        }

        return tokens;
    }

    private static void Skip(ref BlobReader code, OperandType operand)
    {
        int bytes = OperandSizes.Bytes(operand);
        if (operand == OperandType.InlineSwitch) bytes *= code.ReadInt32();
        code.Offset += bytes;
    }
}

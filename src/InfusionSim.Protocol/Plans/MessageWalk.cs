using System.Collections;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using InfusionSim.Protocol.Json;

namespace InfusionSim.Protocol.Plans;

/// <summary>Walks over every field of a message and of all messages in it, by what the contract says there is, so that none is forgotten.</summary>
internal static class MessageWalk
{
    /// <summary>One field of one message.</summary>
    /// <param name="Message">The message.</param>
    /// <param name="Field">The field.</param>
    /// <param name="Path">Its place as proto-JSON names it.</param>
    public readonly record struct Place(IMessage Message, FieldDescriptor Field, string Path);

    /// <summary>Every field of the message and of the messages in it, set or not, in the order of the contract.</summary>
    public static IEnumerable<Place> Fields(IMessage message, string path = "")
    {
        foreach (FieldDescriptor field in message.Descriptor.Fields.InFieldNumberOrder())
        {
            string here = ObjectReader.Join(path, field.JsonName);
            yield return new Place(message, field, here);
            if (field.FieldType != FieldType.Message) continue;
            foreach ((IMessage child, string place) in Children(message, field, here))
                foreach (Place below in Fields(child, place))
                    yield return below;
        }
    }

    private static IEnumerable<(IMessage Child, string Path)> Children(IMessage message, FieldDescriptor field, string path)
    {
        object? value = field.Accessor.GetValue(message);
        if (field.IsRepeated)
        {
            int index = 0;
            foreach (IMessage child in (IList)value!) yield return (child, $"{path}[{index++}]");
        }
        else if (value is IMessage child)
        {
            yield return (child, path);
        }
    }
}

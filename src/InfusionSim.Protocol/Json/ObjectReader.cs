using System.Text.Json;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Json;

/// <summary>Reads one JSON object into a message, key by key, and goes on after a fault.</summary>
/// <param name="faults">Takes the faults.</param>
internal sealed class ObjectReader(FaultList faults)
{
    private readonly ValueReader _values = new(faults);

    /// <summary>Reads the keys of an object.</summary>
    public void Read(JsonElement element, IMessage message, string path)
    {
        var seen = new HashSet<int>();
        foreach (JsonProperty property in element.EnumerateObject())
        {
            if (!ValueReader.TryGetText(() => property.Name, out string key))
            {
                faults.Add(path, $"A key of {Subject(path, message.Descriptor)} holds half a letter (a lone surrogate).", ErrorReason.NotJson);
                continue;
            }

            FieldDescriptor? field = FieldOf(message.Descriptor, key);
            if (field is null)
                AddUnknown(message.Descriptor, path, key);
            else if (!seen.Add(field.FieldNumber))
                faults.Add(Join(path, field.JsonName), $"{Join(path, field.JsonName)} is given twice; keep one.", ErrorReason.PlanInvalid);
            else if (property.Value.ValueKind != JsonValueKind.Null)
                ReadField(property.Value, message, field, Join(path, field.JsonName));
        }
    }

    /// <summary>Path of a key below another path.</summary>
    public static string Join(string path, string key) => path.Length == 0 ? key : $"{path}.{key}";

    private void ReadField(JsonElement value, IMessage message, FieldDescriptor field, string path)
    {
        if (field.IsRepeated)
        {
            ReadList(value, (System.Collections.IList)field.Accessor.GetValue(message), field, path);
        }
        else if (field.FieldType == FieldType.Message)
        {
            if (ReadMessage(value, field, path) is IMessage child) field.Accessor.SetValue(message, child);
        }
        else if (_values.Read(value, field, path) is object read)
        {
            field.Accessor.SetValue(message, read);
        }
    }

    private void ReadList(JsonElement value, System.Collections.IList list, FieldDescriptor field, string path)
    {
        if (value.ValueKind != JsonValueKind.Array)
        {
            faults.Add(path, $"{path} must be a list [ … ]; it is {ValueReader.KindOf(value)}.");
            return;
        }

        int index = 0;
        foreach (JsonElement element in value.EnumerateArray())
        {
            string place = $"{path}[{index++}]";
            // A place that cannot be read keeps its number, so that the paths of later faults stay true.
            object? read = field.FieldType == FieldType.Message ? ReadMessage(element, field, place) ?? Empty(field) : _values.Read(element, field, place);
            if (read is not null) list.Add(read);
        }
    }

    private IMessage? ReadMessage(JsonElement value, FieldDescriptor field, string path)
    {
        if (value.ValueKind != JsonValueKind.Object)
        {
            faults.Add(path, $"{path} must be an object {{ … }}; it is {ValueReader.KindOf(value)}.");
            return null;
        }

        IMessage child = Empty(field);
        // A place in a plan is named from the plan's root, whichever way the plan came.
        Read(value, child, field.MessageType == InfusionPlan.Descriptor ? "" : path);
        return child;
    }

    private void AddUnknown(MessageDescriptor descriptor, string path, string key)
    {
        string shown = ValueReader.Shorten(key);
        if (RefusedKeys.Answer(descriptor, key) is string refused)
        {
            faults.Add(Join(path, shown), $"'{shown}' is not a key of {Subject(path, descriptor)}. {refused}", ErrorReason.NotComputedYet);
            return;
        }

        string? nearest = NearestKey.Of(key, descriptor.Fields.InFieldNumberOrder().Select(field => field.JsonName));
        string advice = nearest is not null
            ? $"did you mean '{nearest}'?"
            : "known here are " + string.Join(", ", descriptor.Fields.InFieldNumberOrder().Select(field => field.JsonName)) + ".";
        faults.Add(Join(path, shown), $"'{shown}' is not a key of {Subject(path, descriptor)}; {advice}", ErrorReason.UnknownKey);
    }

    private static string Subject(string path, MessageDescriptor descriptor)
    {
        if (path.Length > 0) return path;
        return descriptor == InfusionPlan.Descriptor ? "the plan" : descriptor == Resin.Descriptor ? "the resin card" : "the request";
    }

    private static FieldDescriptor? FieldOf(MessageDescriptor descriptor, string key)
    {
        foreach (FieldDescriptor field in descriptor.Fields.InFieldNumberOrder())
            if (field.JsonName == key || field.Name == key) return field;
        return null;
    }

    private static IMessage Empty(FieldDescriptor field) => field.MessageType.Parser.ParseFrom(ByteString.Empty);
}

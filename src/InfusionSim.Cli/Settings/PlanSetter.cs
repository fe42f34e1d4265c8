using System.Collections;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using InfusionSim.Cli.Quantities;
using InfusionSim.Protocol.Json;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Cli.Settings;

/// <summary>Changes single values of a plan as typed on the command line.</summary>
public static class PlanSetter
{
    /// <summary>Sets one value.</summary>
    /// <param name="plan">The plan; changed in place.</param>
    /// <param name="setting">What to set.</param>
    /// <returns>What was understood, in words: "resin.viscosityPaS = 0.3 Pa·s".</returns>
    /// <exception cref="FormatException">When the key or the value cannot be understood; the message says what can.</exception>
    public static string Set(InfusionPlan plan, Setting setting)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(setting);
        IReadOnlyList<KeyStep> steps = KeyStep.Split(setting.Key);
        IMessage at = plan;
        string path = "";
        for (int k = 0; k < steps.Count; k++)
        {
            FieldDescriptor field = PlanKeys.Find(at.Descriptor, steps[k].Name) ?? throw new FormatException(PlanKeys.Unknown(at.Descriptor, path, steps[k].Name));
            path += (path.Length == 0 ? "" : ".") + steps[k].Name;
            bool isLast = k == steps.Count - 1;
            if (field.FieldType != FieldType.Message)
            {
                if (!isLast) throw new FormatException($"{path} is a value; nothing lies below it.");
                return $"{path} = {SetValue(at, field, setting.Value, plan)}";
            }

            (at, path) = Enter(at, field, steps[k], path);
            if (isLast) throw new FormatException($"{path} holds several values; set one of them: {string.Join(", ", at.Descriptor.Fields.InDeclarationOrder().Select(one => path + "." + one.JsonName))}.");
        }

        throw new FormatException("write KEY=VALUE.");
    }

    private static (IMessage Message, string Path) Enter(IMessage at, FieldDescriptor field, KeyStep step, string path)
    {
        if (field.IsRepeated) return Item((IList)field.Accessor.GetValue(at), step, path);
        if (step.Item is not null) throw new FormatException($"{path} is no list; leave out [{step.Item}].");
        if (field.Accessor.GetValue(at) is not IMessage below)
        {
            below = field.MessageType.Parser.ParseFrom(ByteString.Empty);
            field.Accessor.SetValue(at, below);
        }

        return (below, path);
    }

    private static (IMessage Message, string Path) Item(IList items, KeyStep step, string path)
    {
        if (items.Count == 0) throw new FormatException($"{path} is empty in this plan; there is nothing to set.");
        string range = items.Count == 1 ? $"{path}[0]" : $"{path}[0] to {path}[{items.Count - 1}]";
        if (step.Item is null) throw new FormatException($"{path} is a list; say which: {range}.");
        if (step.Number is int number)
            return number < items.Count ? ((IMessage)items[number]!, $"{path}[{number}]") : throw new FormatException($"{path} has {items.Count} {(items.Count == 1 ? "item" : "items")}: {range}.");
        foreach (IMessage item in items)
            if (NameOf(item) == step.Item) return (item, $"{path}[{step.Item}]");
        string names = string.Join(", ", items.Cast<IMessage>().Select(NameOf).Where(name => !string.IsNullOrEmpty(name)));
        throw new FormatException(names.Length == 0 ? $"{path} has no names; count from 0: {range}." : $"{path} has none called '{step.Item}'. There are: {names}.");
    }

    private static string? NameOf(IMessage item) => item.Descriptor.FindFieldByName("name")?.Accessor.GetValue(item) as string;

    private static string SetValue(IMessage at, FieldDescriptor field, string typed, InfusionPlan plan)
    {
        switch (field.FieldType)
        {
            case FieldType.Double:
                Quantity quantity = QuantityReader.Read(field.JsonName, typed, PlanDefaults.AmbientMbarAbs(plan));
                field.Accessor.SetValue(at, quantity.Value);
                return quantity.Understood + LetGo(at, field, plan);
            case FieldType.Int32:
                int whole = Whole(typed);
                field.Accessor.SetValue(at, whole);
                return whole.ToString(System.Globalization.CultureInfo.InvariantCulture);
            case FieldType.Bool:
                bool truth = Truth(typed);
                field.Accessor.SetValue(at, truth);
                return (truth ? "true" : "false") + LetGo(at, field, plan);
            case FieldType.Enum:
                EnumValueDescriptor choice = Choose(field.EnumType, typed);
                field.Accessor.SetValue(at, choice.Number);
                return choice.Name;
            default:
                field.Accessor.SetValue(at, typed);
                return $"'{typed}'" + LetGo(at, field, plan);
        }
    }

    private static int Whole(string typed) =>
        int.TryParse(typed.Trim(), System.Globalization.NumberStyles.AllowLeadingSign, System.Globalization.CultureInfo.InvariantCulture, out int whole)
            ? whole
            : throw new FormatException($"'{typed}' is no whole number. Write for example 3.");

    private static bool Truth(string typed) => typed.Trim().ToLowerInvariant() switch
    {
        "true" or "yes" => true,
        "false" or "no" => false,
        _ => throw new FormatException($"'{typed}' is neither true nor false."),
    };

    // A zone has one of the two, and the air of the shop one source; setting one lets go of the other.
    private static string LetGo(IMessage at, FieldDescriptor set, InfusionPlan plan)
    {
        if (at is Shop && set.FieldNumber == Shop.AltitudeMFieldNumber && plan.Bag is { HasAmbientMbarAbs: true } bag)
        {
            bag.ClearAmbientMbarAbs();
            return $" (in place of bag.ambientMbarAbs: {Protocol.Units.Numbers.Say(PlanDefaults.AmbientMbarAbs(plan))} mbar of air)";
        }

        if (at is Moment moment) return OnlyOne(moment, set);
        if (at is not Zone zone) return "";
        if (set.FieldNumber == Zone.PorosityFieldNumber && zone.HasFibreVolumeFraction)
        {
            zone.ClearFibreVolumeFraction();
            return " (in place of fibreVolumeFraction)";
        }

        if (set.FieldNumber != Zone.FibreVolumeFractionFieldNumber || !zone.HasPorosity) return "";
        zone.ClearPorosity();
        return " (in place of porosity)";
    }

    // A moment is one of its fields.
    private static string OnlyOne(Moment moment, FieldDescriptor set)
    {
        FieldDescriptor[] others = [.. Moment.Descriptor.Fields.InDeclarationOrder().Where(field => field != set && IsSet(field, moment))];
        foreach (FieldDescriptor other in others) other.Accessor.Clear(moment);
        return others.Length == 0 ? "" : $" (in place of {others[0].JsonName})";
    }

    private static bool IsSet(FieldDescriptor field, Moment moment) => field.HasPresence ? field.Accessor.HasValue(moment) : moment.WhenReached.Length > 0;

    // "membrane" and "VENT_KIND_MEMBRANE" are the same choice.
    private static EnumValueDescriptor Choose(EnumDescriptor choices, string typed)
    {
        List<EnumValueDescriptor> real = [.. choices.Values.Where(one => one.Number != 0)];
        string wanted = typed.Trim().Replace('-', '_').ToUpperInvariant();
        EnumValueDescriptor? found = real.FirstOrDefault(one => one.Name == wanted || one.Name.EndsWith("_" + wanted, StringComparison.Ordinal));
        string prefix = choices.Values[0].Name.Replace("UNSPECIFIED", "", StringComparison.Ordinal);
        string? nearest = found is null ? NearestKey.Of(wanted, real.SelectMany(one => new[] { one.Name, one.Name[prefix.Length..] })) : null;
        return found ?? throw new FormatException(
            $"'{typed}' is none of {string.Join(", ", real.Select(one => one.Name))}.{(nearest is null ? "" : $" Did you mean {nearest}?")}");
    }
}

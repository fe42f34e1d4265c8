using Google.Protobuf;
using Google.Protobuf.Reflection;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Checks every number of a request: there if it must be, finite, in its range.</summary>
public static class NumberCheck
{
    /// <summary>Checks every number of a message and of the messages in it.</summary>
    /// <param name="message">The message.</param>
    /// <param name="faults">Takes the faults.</param>
    public static void Run(IMessage message, FaultList faults)
    {
        ArgumentNullException.ThrowIfNull(message);
        ArgumentNullException.ThrowIfNull(faults);
        foreach (MessageWalk.Place place in MessageWalk.Fields(message))
        {
            if (place.Field.FieldType is FieldType.Double or FieldType.Int32) CheckNumber(place, message as InfusionPlan, faults);
            if (place.Field.FieldType == FieldType.Enum) CheckChoice(place, faults);
        }
    }

    private static void CheckNumber(MessageWalk.Place place, InfusionPlan? plan, FaultList faults)
    {
        NumberRule rule = NumberRules.Of(place.Field);
        if (place.Field.IsRepeated)
        {
            int index = 0;
            foreach (double value in (IList<double>)place.Field.Accessor.GetValue(place.Message))
                CheckValue(value, rule, place with { Path = $"{place.Path}[{index++}]" }, plan, faults);
        }
        else if (!place.Field.HasPresence || place.Field.Accessor.HasValue(place.Message))
        {
            CheckValue(Convert.ToDouble(place.Field.Accessor.GetValue(place.Message), System.Globalization.CultureInfo.InvariantCulture), rule, place, plan, faults);
        }
        else if (rule.IsNeeded && rule.IsSpared?.Invoke(place.Message) is not true && !faults.HasAt(place.Path))
        {
            string unit = rule.Unit.Length == 0 ? "" : $" in {rule.Unit}";
            faults.Add(place.Path, $"{SubjectOf(place)} is missing; give it{unit}, for example \"{place.Field.JsonName}\": {rule.Example}.");
        }
    }

    private static void CheckValue(double value, NumberRule rule, MessageWalk.Place place, InfusionPlan? plan, FaultList faults)
    {
        if (value >= rule.Least && value <= rule.Most) return;
        string unit = rule.Unit.Length == 0 ? "" : " " + rule.Unit;
        string shown = double.IsFinite(value) ? Numbers.Say(value) + unit : Numbers.Say(value);
        string? advice = double.IsFinite(value) ? rule.Advice?.Invoke(value, plan) : "Give a finite number.";
        faults.Add(place.Path, $"{SubjectOf(place)} is {shown}; it must lie between {Numbers.Say(rule.Least)} and {Numbers.Say(rule.Most)}{unit}."
            + (advice is null ? "" : " " + advice));
    }

    private static void CheckChoice(MessageWalk.Place place, FaultList faults)
    {
        if (place.Field.IsRepeated) return;
        int number = Convert.ToInt32(place.Field.Accessor.GetValue(place.Message), System.Globalization.CultureInfo.InvariantCulture);
        if (place.Field.EnumType.FindValueByNumber(number) is not null) return;
        string names = string.Join(", ", place.Field.EnumType.Values.Where(choice => choice.Number != 0).Select(choice => choice.Name));
        faults.Add(place.Path, $"{place.Path} is the number {number}, which is no choice here. It must be one of {names}.");
    }

    private static string SubjectOf(MessageWalk.Place place) => place.Message switch
    {
        Zone zone when zone.Name.Length > 0 => $"{place.Field.JsonName} of zone '{Json.ValueReader.Shorten(zone.Name)}'",
        Feed feed when feed.Name.Length > 0 => $"{place.Field.JsonName} of feed '{Json.ValueReader.Shorten(feed.Name)}'",
        Vent vent when vent.Name.Length > 0 => $"{place.Field.JsonName} of vent '{Json.ValueReader.Shorten(vent.Name)}'",
        FlowMesh mesh when mesh.Name.Length > 0 => $"{place.Field.JsonName} of flow mesh '{Json.ValueReader.Shorten(mesh.Name)}'",
        Core core when core.Name.Length > 0 => $"{place.Field.JsonName} of core '{Json.ValueReader.Shorten(core.Name)}'",
        Gap gap when gap.Name.Length > 0 => $"{place.Field.JsonName} of gap '{Json.ValueReader.Shorten(gap.Name)}'",
        Pot pot when pot.Name.Length > 0 => $"{place.Field.JsonName} of pot '{Json.ValueReader.Shorten(pot.Name)}'",
        _ => place.Path,
    };
}

using Google.Protobuf;
using Google.Protobuf.Reflection;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Tests.Plans;

public sealed class NumberRulesTests
{
    private static IEnumerable<MessageDescriptor> MessagesIn(MessageDescriptor root, HashSet<string> seen)
    {
        if (!seen.Add(root.FullName)) yield break;
        yield return root;
        foreach (FieldDescriptor field in root.Fields.InFieldNumberOrder().Where(field => field.FieldType == FieldType.Message))
            foreach (MessageDescriptor below in MessagesIn(field.MessageType, seen)) yield return below;
    }

    private static IEnumerable<FieldDescriptor> FieldsOfRequests()
    {
        var seen = new HashSet<string>();
        return FillServiceReflection.Descriptor.Services.Concat(ResinServiceReflection.Descriptor.Services).Concat(MixServiceReflection.Descriptor.Services).SelectMany(service => service.Methods)
            .SelectMany(method => MessagesIn(method.InputType, seen).ToList())
            .SelectMany(message => message.Fields.InFieldNumberOrder());
    }

    [Fact]
    public void Rules_EveryNumberThatARequestCanHold_HasARange()
    {
        FieldDescriptor[] numbers = [.. FieldsOfRequests().Where(field => field.FieldType is FieldType.Double or FieldType.Int32)];

        numbers.Length.ShouldBeGreaterThan(45);
        numbers.Where(field => NumberRules.Find(field) is null).Select(field => field.FullName).ShouldBeEmpty();
        FieldsOfRequests().Where(field => field.FieldType is FieldType.Float or FieldType.UInt32 or FieldType.Int64).ShouldBeEmpty();
    }

    [Fact]
    public void Rules_EveryWholeNumber_IsRefusedOutOfRange()
    {
        FieldDescriptor[] fields = [.. FieldsOfRequests().Where(field => field.FieldType == FieldType.Int32)];
        fields.Length.ShouldBe(3);
        foreach (FieldDescriptor field in fields)
        {
            foreach (int bad in (int[])[0, -1, int.MinValue, int.MaxValue, (int)NumberRules.Of(field).Most + 1])
            {
                IMessage message = (IMessage)Activator.CreateInstance(field.ContainingType.ClrType)!;
                field.Accessor.SetValue(message, bad);
                var faults = new FaultList();

                NumberCheck.Run(message, faults);

                faults.HasUnder(field.JsonName).ShouldBeTrue($"{field.FullName} = {bad}");
            }
        }
    }

    [Fact]
    public void Rules_EveryDouble_IsRefusedWhenItIsNoNumberOrOutOfRange()
    {
        foreach (FieldDescriptor field in FieldsOfRequests().Where(field => field.FieldType == FieldType.Double))
        {
            NumberRule rule = NumberRules.Of(field);
            foreach (double bad in (double[])[double.NaN, double.PositiveInfinity, double.NegativeInfinity, rule.Least - 1, Math.BitIncrement(rule.Most)])
            {
                IMessage message = (IMessage)Activator.CreateInstance(field.ContainingType.ClrType)!;
                if (field.IsRepeated) ((IList<double>)field.Accessor.GetValue(message)).Add(bad);
                else field.Accessor.SetValue(message, bad);
                var faults = new FaultList();

                NumberCheck.Run(message, faults);

                faults.HasUnder(field.JsonName).ShouldBeTrue($"{field.FullName} = {bad}");
            }
        }
    }
}

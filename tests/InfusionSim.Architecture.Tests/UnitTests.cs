using System.Reflection;
using System.Text.RegularExpressions;
using InfusionSim.Architecture.Tests.Metadata;

namespace InfusionSim.Architecture.Tests;

/// <summary>A number without a unit is a defect: every public quantity of Numerics, Physics and Planning ends its comment with one in brackets.</summary>
public sealed partial class UnitTests
{
    private const BindingFlags OwnPublic = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    /// <summary>Members without a unit of their own, each with its reason.</summary>
    private static readonly Dictionary<string, string> Exceptions = [];

    public static TheoryData<string> Projects => ["InfusionSim.Numerics", "InfusionSim.Physics", "InfusionSim.Planning"];

    [Theory]
    [MemberData(nameof(Projects))]
    public void Quantities_Comments_NameTheUnitInBrackets(string project)
    {
        Documentation documentation = new(project);
        List<(string Name, string Comment)> quantities = [.. Assembly.Load(project).GetExportedTypes().SelectMany(type => QuantitiesOf(type, documentation))];

        quantities.Count.ShouldBeGreaterThan(10);
        quantities.Where(one => !Exceptions.ContainsKey(one.Name) && !UnitInBrackets().IsMatch(one.Comment)).Select(one => one.Name).ShouldBeEmpty();
    }

    private static IEnumerable<(string Name, string Comment)> QuantitiesOf(Type type, Documentation documentation)
    {
        string typeName = DocumentationNames.Of(type);
        foreach (PropertyInfo property in type.GetProperties(OwnPublic).Where(one => IsQuantity(one.PropertyType)))
        {
            string name = DocumentationNames.Of(property);
            yield return (name, documentation.OfMember(name) + documentation.OfParameter(typeName, property.Name));
        }

        foreach (FieldInfo field in type.GetFields(OwnPublic).Where(one => IsQuantity(one.FieldType)))
            yield return (DocumentationNames.Of(field), documentation.OfMember(DocumentationNames.Of(field)));

        bool isRecord = type.GetMethod("<Clone>$", OwnPublic) is not null || type.GetMethod("PrintMembers", BindingFlags.NonPublic | BindingFlags.Instance) is not null;
        foreach (MethodBase method in type.GetConstructors(OwnPublic).Cast<MethodBase>().Concat(type.GetMethods(OwnPublic)))
        {
            bool writtenByTheCompiler = method.IsSpecialName && !method.IsConstructor || method.Name.Contains('<', StringComparison.Ordinal)
                || isRecord && method.Name is "Deconstruct" or "Equals" or "GetHashCode" or "ToString";
            bool isCommentedWhereItIsDeclared = method is MethodInfo { IsVirtual: true } own && own.GetBaseDefinition().DeclaringType?.Assembly == type.Assembly && own.GetBaseDefinition() != own;
            if (writtenByTheCompiler || isCommentedWhereItIsDeclared) continue;
            string name = DocumentationNames.Of(method);
            if (method is MethodInfo { ReturnType: var returned } && IsQuantity(returned)) yield return (name, documentation.OfMember(name));
            foreach (ParameterInfo parameter in method.GetParameters().Where(one => IsQuantity(one.ParameterType)))
                yield return ($"{name} {parameter.Name}", documentation.OfParameter(name, parameter.Name!) + documentation.OfParameter(typeName, parameter.Name!));
        }
    }

    private static bool IsQuantity(Type type)
    {
        if (type.IsByRef || type.IsArray) return IsQuantity(type.GetElementType()!);
        if (type.IsGenericType && type.GetGenericArguments().Length == 1 && !typeof(Delegate).IsAssignableFrom(type)) return IsQuantity(type.GetGenericArguments()[0]);
        return type == typeof(double) || type == typeof(float);
    }

    [GeneratedRegex(@"\[[^\]\s][^\]]*\]")]
    private static partial Regex UnitInBrackets();
}

using System.Reflection;

namespace InfusionSim.Architecture.Tests.Metadata;

/// <summary>Names of members as the compiler writes them into documentation files.</summary>
internal static class DocumentationNames
{
    public static string Of(Type type) => $"T:{Plain(type)}";

    public static string Of(PropertyInfo property) => $"P:{Plain(property.DeclaringType!)}.{property.Name}{Parameters(property.GetIndexParameters())}";

    public static string Of(FieldInfo field) => $"F:{Plain(field.DeclaringType!)}.{field.Name}";

    public static string Of(MethodBase method)
    {
        string name = method.IsConstructor ? "#ctor" : method.Name;
        string arity = method.IsGenericMethod ? $"``{method.GetGenericArguments().Length}" : "";
        return $"M:{Plain(method.DeclaringType!)}.{name}{arity}{Parameters(method.GetParameters())}";
    }

    private static string Parameters(ParameterInfo[] parameters) =>
        parameters.Length == 0 ? "" : $"({string.Join(',', parameters.Select(one => Signature(one.ParameterType)))})";

    private static string Plain(Type type) => (type.IsGenericType ? type.GetGenericTypeDefinition() : type).FullName!.Replace('+', '.');

    private static string Signature(Type type)
    {
        if (type.IsByRef) return Signature(type.GetElementType()!) + "@";
        if (type.IsPointer) return Signature(type.GetElementType()!) + "*";
        if (type.IsArray)
        {
            string ranks = type.GetArrayRank() == 1 ? "[]" : $"[{string.Join(',', Enumerable.Repeat("0:", type.GetArrayRank()))}]";
            return Signature(type.GetElementType()!) + ranks;
        }

        if (type.IsGenericParameter) return (type.DeclaringMethod is null ? "`" : "``") + type.GenericParameterPosition;
        if (!type.IsGenericType) return Plain(type);
        string plain = Plain(type);
        return $"{plain[..plain.LastIndexOf('`')]}{{{string.Join(',', type.GetGenericArguments().Select(Signature))}}}";
    }
}

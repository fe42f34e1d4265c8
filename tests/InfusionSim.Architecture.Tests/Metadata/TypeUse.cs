namespace InfusionSim.Architecture.Tests.Metadata;

/// <summary>One use of a type.</summary>
/// <param name="UserNamespace">Namespace of the outermost type that uses it.</param>
/// <param name="User">The outermost type that uses it.</param>
/// <param name="Member">The member that uses it, or what of the type does.</param>
/// <param name="Assembly">Assembly of the used type; empty for the user's own.</param>
/// <param name="Namespace">Namespace of the used type.</param>
/// <param name="Type">Name of the used type.</param>
internal readonly record struct TypeUse(string UserNamespace, string User, string Member, string Assembly, string Namespace, string Type)
{
    public override string ToString() => $"{UserNamespace}.{User}.{Member} uses {Namespace}.{Type}";
}

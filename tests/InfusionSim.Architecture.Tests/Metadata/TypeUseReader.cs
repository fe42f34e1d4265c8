using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;

namespace InfusionSim.Architecture.Tests.Metadata;

/// <summary>Reads from a built assembly which types each of its types uses: in signatures, in attributes and inside method bodies.</summary>
internal sealed class TypeUseReader
{
    private readonly PEReader file;
    private readonly MetadataReader metadata;
    private readonly HashSet<TypeUse> uses = [];

    private TypeUseReader(PEReader file)
    {
        this.file = file;
        metadata = file.GetMetadataReader();
    }

    public static IReadOnlyList<TypeUse> Read(string path)
    {
        using PEReader file = new(File.OpenRead(path));
        TypeUseReader reader = new(file);
        foreach (TypeDefinitionHandle type in reader.metadata.TypeDefinitions) reader.ReadType(type);
        return [.. reader.uses];
    }

    private void ReadType(TypeDefinitionHandle handle)
    {
        TypeDefinition type = metadata.GetTypeDefinition(handle);
        NamedTypes declared = new();
        Name(declared, type.BaseType);
        foreach (InterfaceImplementationHandle one in type.GetInterfaceImplementations()) Name(declared, metadata.GetInterfaceImplementation(one).Interface);
        NameAttributes(declared, type.GetCustomAttributes());
        NameConstraints(declared, type.GetGenericParameters());
        Record(handle, "declaration", declared);

        foreach (FieldDefinitionHandle one in type.GetFields())
        {
            FieldDefinition field = metadata.GetFieldDefinition(one);
            NamedTypes named = new();
            field.DecodeSignature(named, null);
            NameAttributes(named, field.GetCustomAttributes());
            Record(handle, metadata.GetString(field.Name), named);
        }

        foreach (PropertyDefinitionHandle one in type.GetProperties())
        {
            PropertyDefinition property = metadata.GetPropertyDefinition(one);
            NamedTypes named = new();
            property.DecodeSignature(named, null);
            NameAttributes(named, property.GetCustomAttributes());
            Record(handle, metadata.GetString(property.Name), named);
        }

        foreach (MethodDefinitionHandle one in type.GetMethods()) ReadMethod(handle, metadata.GetMethodDefinition(one));
    }

    private void ReadMethod(TypeDefinitionHandle owner, MethodDefinition method)
    {
        NamedTypes named = new();
        method.DecodeSignature(named, null);
        NameAttributes(named, method.GetCustomAttributes());
        NameConstraints(named, method.GetGenericParameters());
        if (method.RelativeVirtualAddress != 0)
        {
            MethodBodyBlock body = file.GetMethodBody(method.RelativeVirtualAddress);
            if (!body.LocalSignature.IsNil) metadata.GetStandaloneSignature(body.LocalSignature).DecodeLocalSignature(named, null);
            foreach (ExceptionRegion region in body.ExceptionRegions) Name(named, region.CatchType);
            foreach (EntityHandle token in MethodBodyTokens.Of(body)) Name(named, token);
        }

        Record(owner, metadata.GetString(method.Name), named);
    }

    private void Name(NamedTypes named, EntityHandle handle)
    {
        if (handle.IsNil) return;
        switch (handle.Kind)
        {
            case HandleKind.TypeDefinition or HandleKind.TypeReference:
                named.Found.Add(handle);
                break;
            case HandleKind.TypeSpecification:
                metadata.GetTypeSpecification((TypeSpecificationHandle)handle).DecodeSignature(named, null);
                break;
            case HandleKind.MethodDefinition:
                named.Found.Add(metadata.GetMethodDefinition((MethodDefinitionHandle)handle).GetDeclaringType());
                break;
            case HandleKind.FieldDefinition:
                named.Found.Add(metadata.GetFieldDefinition((FieldDefinitionHandle)handle).GetDeclaringType());
                break;
            case HandleKind.MethodSpecification:
                MethodSpecification generic = metadata.GetMethodSpecification((MethodSpecificationHandle)handle);
                generic.DecodeSignature(named, null);
                Name(named, generic.Method);
                break;
            case HandleKind.MemberReference:
                MemberReference member = metadata.GetMemberReference((MemberReferenceHandle)handle);
                Name(named, member.Parent);
                if (member.GetKind() == MemberReferenceKind.Field) member.DecodeFieldSignature(named, null);
                else member.DecodeMethodSignature(named, null);
                break;
            case HandleKind.StandaloneSignature:
                StandaloneSignature call = metadata.GetStandaloneSignature((StandaloneSignatureHandle)handle);
                if (call.GetKind() == StandaloneSignatureKind.Method) call.DecodeMethodSignature(named, null);
                break;
        }
    }

    private void NameAttributes(NamedTypes named, CustomAttributeHandleCollection attributes)
    {
        foreach (CustomAttributeHandle one in attributes) Name(named, metadata.GetCustomAttribute(one).Constructor);
    }

    private void NameConstraints(NamedTypes named, GenericParameterHandleCollection parameters)
    {
        foreach (GenericParameterHandle parameter in parameters)
            foreach (GenericParameterConstraintHandle constraint in metadata.GetGenericParameter(parameter).GetConstraints())
                Name(named, metadata.GetGenericParameterConstraint(constraint).Type);
    }

    private void Record(TypeDefinitionHandle user, string member, NamedTypes named)
    {
        TypeDefinition outermost = metadata.GetTypeDefinition(user);
        while (!outermost.GetDeclaringType().IsNil) outermost = metadata.GetTypeDefinition(outermost.GetDeclaringType());
        foreach (EntityHandle handle in named.Found)
        {
            (string assembly, string space, string name) = Resolve(handle);
            uses.Add(new TypeUse(metadata.GetString(outermost.Namespace), metadata.GetString(outermost.Name), member, assembly, space, name));
        }
    }

    private (string Assembly, string Namespace, string Name) Resolve(EntityHandle handle)
    {
        if (handle.Kind == HandleKind.TypeDefinition)
        {
            TypeDefinition type = metadata.GetTypeDefinition((TypeDefinitionHandle)handle);
            while (!type.GetDeclaringType().IsNil) type = metadata.GetTypeDefinition(type.GetDeclaringType());
            return ("", metadata.GetString(type.Namespace), metadata.GetString(type.Name));
        }

        TypeReference reference = metadata.GetTypeReference((TypeReferenceHandle)handle);
        while (reference.ResolutionScope.Kind == HandleKind.TypeReference) reference = metadata.GetTypeReference((TypeReferenceHandle)reference.ResolutionScope);
        string assembly = reference.ResolutionScope.Kind == HandleKind.AssemblyReference
            ? metadata.GetString(metadata.GetAssemblyReference((AssemblyReferenceHandle)reference.ResolutionScope).Name)
            : "";
        return (assembly, metadata.GetString(reference.Namespace), metadata.GetString(reference.Name));
    }
}

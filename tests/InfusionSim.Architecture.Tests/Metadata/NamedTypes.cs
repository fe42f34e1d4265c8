using System.Collections.Immutable;
using System.Reflection.Metadata;

namespace InfusionSim.Architecture.Tests.Metadata;

/// <summary>Collects every type that a signature names.</summary>
internal sealed class NamedTypes : ISignatureTypeProvider<EntityHandle, object?>
{
    /// <summary>Types named so far.</summary>
    public HashSet<EntityHandle> Found { get; } = [];

    public EntityHandle GetTypeFromDefinition(MetadataReader reader, TypeDefinitionHandle handle, byte rawTypeKind)
    {
        Found.Add(handle);
        return handle;
    }

    public EntityHandle GetTypeFromReference(MetadataReader reader, TypeReferenceHandle handle, byte rawTypeKind)
    {
        Found.Add(handle);
        return handle;
    }

    public EntityHandle GetTypeFromSpecification(MetadataReader reader, object? genericContext, TypeSpecificationHandle handle, byte rawTypeKind) =>
        reader.GetTypeSpecification(handle).DecodeSignature(this, genericContext);

    public EntityHandle GetModifiedType(EntityHandle modifier, EntityHandle unmodifiedType, bool isRequired) => unmodifiedType;

    public EntityHandle GetFunctionPointerType(MethodSignature<EntityHandle> signature) => default;

    public EntityHandle GetArrayType(EntityHandle elementType, ArrayShape shape) => elementType;

    public EntityHandle GetByReferenceType(EntityHandle elementType) => elementType;

    public EntityHandle GetGenericInstantiation(EntityHandle genericType, ImmutableArray<EntityHandle> typeArguments) => genericType;

    public EntityHandle GetGenericMethodParameter(object? genericContext, int index) => default;

    public EntityHandle GetGenericTypeParameter(object? genericContext, int index) => default;

    public EntityHandle GetPinnedType(EntityHandle elementType) => elementType;

    public EntityHandle GetPointerType(EntityHandle elementType) => elementType;

    public EntityHandle GetPrimitiveType(PrimitiveTypeCode typeCode) => default;

    public EntityHandle GetSZArrayType(EntityHandle elementType) => elementType;
}

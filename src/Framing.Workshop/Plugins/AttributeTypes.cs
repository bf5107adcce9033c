using System.Reflection.Metadata;

namespace Framing.Workshop;

/// <summary>Tells the metadata decoder the types of attribute arguments, by name, without loading any.</summary>
internal sealed class AttributeTypes : ICustomAttributeTypeProvider<string>
{
    private AttributeTypes() { }

    public static AttributeTypes Names { get; } = new();

    public string GetPrimitiveType(PrimitiveTypeCode typeCode) => typeCode.ToString();

    public string GetSystemType() => "System.Type";

    public string GetSZArrayType(string elementType) => elementType + "[]";

    public string GetTypeFromDefinition(
        MetadataReader reader,
        TypeDefinitionHandle handle,
        byte rawTypeKind
    ) => reader.GetString(reader.GetTypeDefinition(handle).Name);

    public string GetTypeFromReference(
        MetadataReader reader,
        TypeReferenceHandle handle,
        byte rawTypeKind
    ) => reader.GetString(reader.GetTypeReference(handle).Name);

    public string GetTypeFromSerializedName(string name) => name;

    // The contract's one enumeration, SettingKind, is stored as int.
    public PrimitiveTypeCode GetUnderlyingEnumType(string type) => PrimitiveTypeCode.Int32;

    public bool IsSystemType(string type) =>
        string.Equals(type, "System.Type", StringComparison.Ordinal);
}

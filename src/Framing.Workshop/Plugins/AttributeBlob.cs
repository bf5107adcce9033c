using System.Reflection.Metadata;
using Framing.Strategies;

namespace Framing.Workshop;

/// <summary>Reads the contract's attributes as the metadata holds them (ECMA-335, 6th edition, II.23.3).</summary>
/// <remarks>
/// By hand, because the general decoder is built of generic value types that the runtime has to compile at every start.
/// </remarks>
internal static class AttributeBlob
{
    private const ushort Prolog = 1;

    /// <summary>Reads [Strategy]; null when it has another form than this program knows.</summary>
    /// <exception cref="BadImageFormatException">The metadata are damaged.</exception>
    public static StrategyAttribute? Strategy(BlobReader blob) =>
        blob.ReadUInt16() == Prolog
        && blob.ReadSerializedString() is { } name
        && blob.ReadSerializedString() is { } summary
            ? new(name, OneLine.Of(summary))
            : null;

    /// <summary>Reads [StrategySetting]; null when it has another form than this program knows.</summary>
    /// <exception cref="BadImageFormatException">The metadata are damaged.</exception>
    public static StrategySettingAttribute? Setting(BlobReader blob)
    {
        if (blob.ReadUInt16() != Prolog || blob.ReadSerializedString() is not { } name)
        {
            return null;
        }

        var kind = (SettingKind)blob.ReadInt32();
        var summary = blob.ReadSerializedString();
        string? otherwise = null,
            choices = null;
        double least = double.NegativeInfinity,
            most = double.PositiveInfinity,
            below = double.PositiveInfinity;
        for (var named = blob.ReadUInt16(); named > 0; named--)
        {
            var form = (CustomAttributeNamedArgumentKind)blob.ReadByte();
            var type = (SerializationTypeCode)blob.ReadByte();
            var property = blob.ReadSerializedString();
            switch (form, type, property)
            {
                case (
                    CustomAttributeNamedArgumentKind.Property,
                    SerializationTypeCode.String,
                    nameof(StrategySettingAttribute.Default)
                ):
                    otherwise = blob.ReadSerializedString();
                    break;
                case (
                    CustomAttributeNamedArgumentKind.Property,
                    SerializationTypeCode.String,
                    nameof(StrategySettingAttribute.Choices)
                ):
                    choices = blob.ReadSerializedString();
                    break;
                case (
                    CustomAttributeNamedArgumentKind.Property,
                    SerializationTypeCode.Double,
                    nameof(StrategySettingAttribute.Least)
                ):
                    least = blob.ReadDouble();
                    break;
                case (
                    CustomAttributeNamedArgumentKind.Property,
                    SerializationTypeCode.Double,
                    nameof(StrategySettingAttribute.Most)
                ):
                    most = blob.ReadDouble();
                    break;
                case (
                    CustomAttributeNamedArgumentKind.Property,
                    SerializationTypeCode.Double,
                    nameof(StrategySettingAttribute.Below)
                ):
                    below = blob.ReadDouble();
                    break;
                default:
                    return null;
            }
        }

        return new(name, kind, OneLine.Of(summary))
        {
            Default = otherwise,
            Choices = choices,
            Least = least,
            Most = most,
            Below = below,
        };
    }
}

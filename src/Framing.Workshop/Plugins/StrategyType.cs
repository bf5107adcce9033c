using System.Globalization;
using System.Reflection;
using System.Reflection.Metadata;
using Framing.Strategies;

namespace Framing.Workshop;

/// <summary>Turns the metadata of one class that carries [Strategy] into a strategy, or into what is wrong with it.</summary>
internal static class StrategyType
{
    // A damaged file may name a class its own base, or have it hold itself; no honest chain is this long.
    private const int LongestChain = 64;

    private static readonly (string Interface, StrategyKind Kind)[] Kinds =
    [
        (nameof(IRotationStrategy), StrategyKind.Rotation),
        (nameof(IOverlapStrategy), StrategyKind.Overlap),
    ];

    /// <summary>Reads one class and adds what it is to one of the two lists.</summary>
    public static void Read(
        string file,
        Version contract,
        MetadataReader reader,
        TypeDefinition type,
        MarkedAttributes attributes,
        List<FoundStrategy> strategies,
        List<PluginFault> faults
    )
    {
        var (name, summary) = attributes.Strategy!.Value.FixedArguments
            is [{ Value: string first }, { Value: string second }]
            ? (first, OneLine.Of(second))
            : ("", "");
        var outwards = Outwards(reader, type);
        var typeName = FullName(reader, outwards);
        var kinds = AnsweredKinds(reader, type);
        var settings = attributes.Settings.Select(Setting).ToList();
        var problem = Problem(reader, outwards, name, kinds.Count) ?? Problem(settings, kinds);
        if (problem is not null)
        {
            faults.Add(
                new(
                    file,
                    null,
                    $"class {typeName}, strategy \"{OneLine.Of(name)}\": {problem}; left out"
                )
            );
            return;
        }

        strategies.AddRange(
            kinds.Select(kind => new FoundStrategy
            {
                Name = name,
                Summary = summary,
                Kind = kind,
                Settings = settings!,
                File = file,
                ContractVersion = contract,
                TypeName = typeName,
            })
        );
    }

    /// <summary>The class's name as reflection writes it: a nested class after a plus sign.</summary>
    private static string FullName(MetadataReader reader, List<TypeDefinition> outwards)
    {
        var space = reader.GetString(outwards[^1].Namespace);
        var names = Enumerable.Reverse(outwards).Select(type => reader.GetString(type.Name));
        return (space.Length == 0 ? "" : space + ".") + string.Join('+', names);
    }

    /// <summary>The class and the classes that hold it, innermost first.</summary>
    private static List<TypeDefinition> Outwards(MetadataReader reader, TypeDefinition type)
    {
        var chain = new List<TypeDefinition> { type };
        while (chain.Count < LongestChain && chain[^1].GetDeclaringType() is { IsNil: false } outer)
        {
            chain.Add(reader.GetTypeDefinition(outer));
        }

        return chain;
    }

    private static string? Problem(
        MetadataReader reader,
        List<TypeDefinition> outwards,
        string name,
        int kinds
    ) =>
        !IsName(name, '-') ? "a strategy's name is small letters, digits and hyphens"
        : kinds == 0 ? "implements neither IRotationStrategy nor IOverlapStrategy"
        : !IsPublic(outwards) ? "the class is not public"
        : outwards[0].Attributes.HasFlag(TypeAttributes.Abstract) ? "the class is abstract"
        : outwards[0].GetGenericParameters().Count > 0 ? "the class is generic"
        : !HasPlainConstructor(reader, outwards[0])
            ? "the class has no public constructor without parameters"
        : null;

    private static string? Problem(
        List<StrategySettingAttribute?> settings,
        IReadOnlyList<StrategyKind> kinds
    )
    {
        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (var setting in settings)
        {
            if (setting is null || !IsName(setting.Name, '_'))
            {
                return "a setting's name is small letters, digits and underscores";
            }

            if (!names.Add(setting.Name))
            {
                return $"declares the setting \"{setting.Name}\" twice";
            }

            if (kinds.Any(kind => PlanKeys.Of(kind).Contains(setting.Name, StringComparer.Ordinal)))
            {
                return $"the setting \"{setting.Name}\" is a key of the plan itself";
            }

            if (!Enum.IsDefined(setting.Kind))
            {
                return $"the setting \"{setting.Name}\" is of a kind that this program does not know";
            }

            if (setting.Default is not null && !SettingValue.TryParseDefault(setting, out _))
            {
                return $"the default of \"{setting.Name}\" is not {SettingValue.Wanted(setting)}";
            }
        }

        return null;
    }

    private static StrategySettingAttribute? Setting(CustomAttributeValue<string> value)
    {
        if (
            value.FixedArguments
            is not [{ Value: string name }, { Value: int kind }, { Value: string summary }]
        )
        {
            return null;
        }

        object? Named(string property) =>
            value
                .NamedArguments.FirstOrDefault(argument =>
                    string.Equals(argument.Name, property, StringComparison.Ordinal)
                )
                .Value;

        double Number(string property, double otherwise) =>
            Named(property) is double number && !double.IsNaN(number) ? number : otherwise;

        return new(name, (SettingKind)kind, OneLine.Of(summary))
        {
            Default = Named(nameof(StrategySettingAttribute.Default)) as string,
            Choices = Named(nameof(StrategySettingAttribute.Choices)) as string,
            Least = Number(nameof(StrategySettingAttribute.Least), double.NegativeInfinity),
            Most = Number(nameof(StrategySettingAttribute.Most), double.PositiveInfinity),
            Below = Number(nameof(StrategySettingAttribute.Below), double.PositiveInfinity),
        };
    }

    private static bool IsName(string name, char joint) =>
        name.Length is > 0 and <= 64
        && char.IsAsciiLetterLower(name[0])
        && name.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c == joint);

    private static bool IsPublic(List<TypeDefinition> outwards) =>
        outwards.TrueForAll(type =>
            (type.Attributes & TypeAttributes.VisibilityMask)
                is TypeAttributes.Public
                    or TypeAttributes.NestedPublic
        );

    private static bool HasPlainConstructor(MetadataReader reader, TypeDefinition type)
    {
        foreach (var handle in type.GetMethods())
        {
            var method = reader.GetMethodDefinition(handle);
            if (
                (method.Attributes & MethodAttributes.MemberAccessMask) == MethodAttributes.Public
                && reader.StringComparer.Equals(method.Name, ".ctor")
            )
            {
                // Calling convention, then the number of parameters (ECMA-335, II.23.2.1).
                var signature = reader.GetBlobReader(method.Signature);
                signature.ReadSignatureHeader();
                if (signature.ReadCompressedInteger() == 0)
                {
                    return true;
                }
            }
        }

        return false;
    }

    /// <summary>The questions that the class, or a base class in the same plugin, answers.</summary>
    private static List<StrategyKind> AnsweredKinds(MetadataReader reader, TypeDefinition type)
    {
        var kinds = new List<StrategyKind>();

        for (var depth = 0; depth < LongestChain; depth++)
        {
            foreach (var handle in type.GetInterfaceImplementations())
            {
                var answered = reader.GetInterfaceImplementation(handle).Interface;
                if (answered.Kind != HandleKind.TypeReference)
                {
                    continue;
                }

                var name = reader.GetTypeReference((TypeReferenceHandle)answered).Name;
                foreach (var (face, kind) in Kinds)
                {
                    if (reader.StringComparer.Equals(name, face) && !kinds.Contains(kind))
                    {
                        kinds.Add(kind);
                    }
                }
            }

            if (type.BaseType.IsNil || type.BaseType.Kind != HandleKind.TypeDefinition)
            {
                break;
            }

            type = reader.GetTypeDefinition((TypeDefinitionHandle)type.BaseType);
        }

        return kinds;
    }
}

using System.Reflection;
using System.Reflection.Metadata;
using Framing.Strategies;

namespace Framing.Workshop;

/// <summary>Turns the metadata of one class that carries [Strategy] into a strategy, or into what is wrong with it.</summary>
internal static class StrategyClass
{
    // A damaged file may name a class its own base, or have it hold itself; no honest chain is this long.
    private const int LongestChain = 64;

    /// <summary>Reads one class and adds what it is to one of the two lists.</summary>
    public static void Read(
        string file,
        Version contract,
        MetadataReader reader,
        MarkedClass marked,
        List<FoundStrategy> strategies,
        List<PluginFault> faults
    )
    {
        var type = reader.GetTypeDefinition(marked.Class);
        var (typeName, isPublic) = NameAndReach(reader, type);
        var name = marked.Strategy!.Name;
        var isRotation = Answers(reader, type, nameof(IRotationStrategy));
        var isOverlap = Answers(reader, type, nameof(IOverlapStrategy));
        var problem =
            !IsName(name, '-') ? "a strategy's name is small letters, digits and hyphens"
            : !isRotation && !isOverlap
                ? "implements neither IRotationStrategy nor IOverlapStrategy"
            : !isPublic ? "the class is not public"
            : type.Attributes.HasFlag(TypeAttributes.Abstract) ? "the class is abstract"
            : type.GetGenericParameters().Count > 0 ? "the class is generic"
            : !HasPlainConstructor(reader, type)
                ? "the class has no public constructor without parameters"
            : Problem(marked.Settings, isRotation, isOverlap);
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

        if (isRotation)
        {
            strategies.Add(Found(StrategyKind.Rotation));
        }

        if (isOverlap)
        {
            strategies.Add(Found(StrategyKind.Overlap));
        }

        FoundStrategy Found(StrategyKind kind) =>
            new()
            {
                Name = name,
                Summary = marked.Strategy.Summary,
                Kind = kind,
                Settings = marked.Settings!,
                File = file,
                ContractVersion = contract,
                TypeName = typeName,
            };
    }

    /// <summary>The name as reflection writes it, a nested class after a plus sign, and whether all can see the class.</summary>
    private static (string Name, bool IsPublic) NameAndReach(
        MetadataReader reader,
        TypeDefinition type
    )
    {
        var name = reader.GetString(type.Name);
        var isPublic = IsPublic(type);
        for (var depth = 0; depth < LongestChain; depth++)
        {
            var outer = type.GetDeclaringType();
            if (outer.IsNil)
            {
                break;
            }

            type = reader.GetTypeDefinition(outer);
            name = $"{reader.GetString(type.Name)}+{name}";
            isPublic &= IsPublic(type);
        }

        return (
            type.Namespace.IsNil ? name : $"{reader.GetString(type.Namespace)}.{name}",
            isPublic
        );
    }

    private static bool IsPublic(TypeDefinition type) =>
        (type.Attributes & TypeAttributes.VisibilityMask)
            is TypeAttributes.Public
                or TypeAttributes.NestedPublic;

    /// <summary>True when the class, or a base class in the same plugin, implements one of the contract's interfaces.</summary>
    private static bool Answers(MetadataReader reader, TypeDefinition type, string question)
    {
        for (var depth = 0; depth < LongestChain; depth++)
        {
            foreach (var handle in type.GetInterfaceImplementations())
            {
                var answered = reader.GetInterfaceImplementation(handle).Interface;
                if (
                    answered.Kind == HandleKind.TypeReference
                    && reader.StringComparer.Equals(
                        reader.GetTypeReference((TypeReferenceHandle)answered).Name,
                        question
                    )
                )
                {
                    return true;
                }
            }

            if (type.BaseType.IsNil || type.BaseType.Kind != HandleKind.TypeDefinition)
            {
                return false;
            }

            type = reader.GetTypeDefinition((TypeDefinitionHandle)type.BaseType);
        }

        return false;
    }

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

    private static string? Problem(
        List<StrategySettingAttribute?> settings,
        bool isRotation,
        bool isOverlap
    )
    {
        for (var i = 0; i < settings.Count; i++)
        {
            if (settings[i] is not { } setting || !IsName(setting.Name, '_'))
            {
                return "a setting's name is small letters, digits and underscores";
            }

            for (var j = 0; j < i; j++)
            {
                if (settings[j]!.Name == setting.Name)
                {
                    return $"declares the setting \"{setting.Name}\" twice";
                }
            }

            if (
                (isRotation && PlanKeys.IsOfThePlan(StrategyKind.Rotation, setting.Name))
                || (isOverlap && PlanKeys.IsOfThePlan(StrategyKind.Overlap, setting.Name))
            )
            {
                return $"the setting \"{setting.Name}\" is a key of the plan itself";
            }

            if (setting.Kind is not (SettingKind.Number or SettingKind.Text or SettingKind.Flag))
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

    private static bool IsName(string name, char joint)
    {
        if (name.Length is 0 or > 64 || !char.IsAsciiLetterLower(name[0]))
        {
            return false;
        }

        foreach (var c in name)
        {
            if (!char.IsAsciiLetterLower(c) && !char.IsAsciiDigit(c) && c != joint)
            {
                return false;
            }
        }

        return true;
    }
}

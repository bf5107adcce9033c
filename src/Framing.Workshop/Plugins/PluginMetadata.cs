using System.Diagnostics.CodeAnalysis;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using Framing.Strategies;

namespace Framing.Workshop;

/// <summary>Reads what a plugin offers from its metadata. Nothing is loaded, none of its code runs.</summary>
internal static class PluginMetadata
{
    private const string Contract = "Framing.Strategies";

    /// <summary>The version of the contract that this program has.</summary>
    public static Version ContractVersion { get; } =
        typeof(StrategyAttribute).Assembly.GetName().Version!;

    /// <summary>Reads one file.</summary>
    /// <param name="file">The file, with its whole path.</param>
    /// <returns>What it offers, and what is wrong with it. Never throws for what a file may hold.</returns>
    [SuppressMessage(
        "Design",
        "CA1031:Do not catch general exception types",
        Justification = "On damaged files the metadata reader was seen to throw OverflowException beside BadImageFormatException."
    )]
    public static PluginContents Read(string file)
    {
        try
        {
            using var stream = new FileStream(
                file,
                FileMode.Open,
                FileAccess.Read,
                FileShare.ReadWrite | FileShare.Delete
            );
            using var image = new PEReader(stream, PEStreamOptions.PrefetchMetadata);
            return image.HasMetadata
                ? Read(file, image.GetMetadataReader())
                : Refused(file, "not a .NET assembly; left out");
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return Refused(file, $"cannot be read: {OneLine.Of(exception.Message)}; left out");
        }
        catch (Exception)
        {
            return Refused(file, "not a .NET assembly, or a damaged one; left out");
        }
    }

    private static PluginContents Read(string file, MetadataReader reader)
    {
        if (BuiltAgainst(reader) is not { } version)
        {
            return new([], [], IsLibrary: true);
        }

        if (version.Major != ContractVersion.Major)
        {
            return Refused(
                file,
                $"built for version {version.ToString(2)} of the strategy contract, this program has {ContractVersion.ToString(2)}; left out until it is built again"
            );
        }

        if (version > ContractVersion)
        {
            return Refused(
                file,
                $"needs version {version.ToString(2)} of the strategy contract, this program has {ContractVersion.ToString(2)}; left out until the program is newer"
            );
        }

        var strategies = new List<FoundStrategy>();
        var faults = new List<PluginFault>();
        foreach (var marked in MarkedClasses(reader))
        {
            if (marked.Strategy is not null)
            {
                StrategyClass.Read(file, version, reader, marked, strategies, faults);
            }
        }

        if (strategies.Count == 0 && faults.Count == 0)
        {
            faults.Add(new(file, null, "holds no strategy: no class carries [Strategy]"));
        }

        return new(strategies, faults);
    }

    private static PluginContents Refused(string file, string problem) =>
        new([], [new(file, null, problem)]);

    private static Version? BuiltAgainst(MetadataReader reader)
    {
        foreach (var handle in reader.AssemblyReferences)
        {
            var reference = reader.GetAssemblyReference(handle);
            if (reader.StringComparer.Equals(reference.Name, Contract))
            {
                return reference.Version;
            }
        }

        return null;
    }

    /// <summary>The classes that carry attributes of the contract.</summary>
    private static List<MarkedClass> MarkedClasses(MetadataReader reader)
    {
        var classes = new List<MarkedClass>();
        foreach (var handle in reader.CustomAttributes)
        {
            var attribute = reader.GetCustomAttribute(handle);
            if (attribute.Parent.Kind != HandleKind.TypeDefinition)
            {
                continue;
            }

            if (IsOfTheContract(reader, attribute, nameof(StrategyAttribute)))
            {
                Marked(classes, attribute).Strategy = AttributeBlob.Strategy(
                    reader.GetBlobReader(attribute.Value)
                );
            }
            else if (IsOfTheContract(reader, attribute, nameof(StrategySettingAttribute)))
            {
                Marked(classes, attribute)
                    .Settings.Add(AttributeBlob.Setting(reader.GetBlobReader(attribute.Value)));
            }
        }

        return classes;
    }

    private static MarkedClass Marked(List<MarkedClass> classes, CustomAttribute attribute)
    {
        var type = (TypeDefinitionHandle)attribute.Parent;
        foreach (var marked in classes)
        {
            if (marked.Class == type)
            {
                return marked;
            }
        }

        var added = new MarkedClass(type);
        classes.Add(added);
        return added;
    }

    private static bool IsOfTheContract(
        MetadataReader reader,
        CustomAttribute attribute,
        string name
    )
    {
        if (attribute.Constructor.Kind != HandleKind.MemberReference)
        {
            return false;
        }

        var parent = reader.GetMemberReference((MemberReferenceHandle)attribute.Constructor).Parent;
        if (parent.Kind != HandleKind.TypeReference)
        {
            return false;
        }

        var type = reader.GetTypeReference((TypeReferenceHandle)parent);
        return reader.StringComparer.Equals(type.Name, name)
            && reader.StringComparer.Equals(type.Namespace, Contract);
    }
}

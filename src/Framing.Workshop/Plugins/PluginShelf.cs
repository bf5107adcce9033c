using Framing.Strategies;

namespace Framing.Workshop;

/// <summary>The strategies that can be chosen: those of the plugins beside the program and of a folder of the user's.</summary>
/// <remarks>
/// <para>
/// A plugin is a folder with a DLL of the same name in it (<c>plugins/NAME/NAME.dll</c>), with whatever it needs beside;
/// or a DLL that lies in the plugins folder itself.
/// </para>
/// <para>
/// Strategies are listed from metadata. Only a chosen one is loaded, each in a context of its own; what it throws or
/// answers wrongly becomes one line that names it.
/// </para>
/// </remarks>
public sealed class PluginShelf
{
    private readonly List<FoundStrategy> strategies = [];
    private readonly List<PluginFault> faults = [];

    private PluginShelf() { }

    /// <summary>The folder of plugins that come with the program.</summary>
    public static string FolderBesideProgram => Path.Combine(AppContext.BaseDirectory, "plugins");

    /// <summary>The strategies, rotation before overlap, by name.</summary>
    public IReadOnlyList<FoundStrategy> Strategies => strategies;

    /// <summary>What was left out, and why: damaged files, other versions of the contract, doubled names.</summary>
    public IReadOnlyList<PluginFault> Faults => faults;

    /// <summary>Looks through plugin folders.</summary>
    /// <param name="folders">
    /// Folders, the one that wins first: of two strategies with one name that of the earlier folder is taken, and of one
    /// folder that of the earlier file name. The other is named in <see cref="Faults"/>.
    /// </param>
    /// <returns>What they hold. A folder that does not exist is a fault, unless it is the one beside the program.</returns>
    public static PluginShelf Open(params IEnumerable<string> folders)
    {
        ArgumentNullException.ThrowIfNull(folders);
        var shelf = new PluginShelf();
        var looked = new List<string>();
        foreach (var folder in folders)
        {
            var whole = folder.Length == 0 ? folder : Path.GetFullPath(folder);
            if (looked.Contains(whole))
            {
                continue;
            }

            looked.Add(whole);
            foreach (var candidate in PluginFolder.Files(whole, shelf.faults))
            {
                shelf.Add(candidate, PluginMetadata.Read(candidate.File));
            }
        }

        shelf.strategies.Sort(
            (left, right) =>
                left.Kind != right.Kind
                    ? left.Kind.CompareTo(right.Kind)
                    : string.CompareOrdinal(left.Name, right.Name)
        );
        return shelf;
    }

    /// <summary>Finds a strategy by name.</summary>
    /// <param name="kind">Which question it is to answer.</param>
    /// <param name="name">Its name.</param>
    /// <param name="problem">What is wrong and which name is nearest, in one line; null when it was found.</param>
    /// <returns>The strategy, or null.</returns>
    public FoundStrategy? Find(StrategyKind kind, string name, out string? problem)
    {
        ArgumentNullException.ThrowIfNull(name);
        var found = With(kind, name);
        problem = found is null ? Unknown(kind, name) : null;
        return found;
    }

    /// <summary>Loads a rotation strategy.</summary>
    /// <param name="found">One of <see cref="Strategies"/>.</param>
    /// <param name="fault">What is wrong with the plugin; null when it was loaded.</param>
    /// <returns>The strategy, to be disposed of; null when the plugin cannot be loaded.</returns>
    /// <exception cref="ArgumentException">The strategy answers another question.</exception>
    internal static LoadedRotation? LoadRotation(FoundStrategy found, out PluginFault? fault)
    {
        var plugin = Load<IRotationStrategy>(found, StrategyKind.Rotation, out fault);
        return plugin is null ? null : new(plugin);
    }

    /// <summary>Loads an overlap strategy.</summary>
    /// <param name="found">One of <see cref="Strategies"/>.</param>
    /// <param name="fault">What is wrong with the plugin; null when it was loaded.</param>
    /// <returns>The strategy, to be disposed of; null when the plugin cannot be loaded.</returns>
    /// <exception cref="ArgumentException">The strategy answers another question.</exception>
    internal static LoadedOverlap? LoadOverlap(FoundStrategy found, out PluginFault? fault)
    {
        var plugin = Load<IOverlapStrategy>(found, StrategyKind.Overlap, out fault);
        return plugin is null ? null : new(plugin);
    }

    private static LoadedPlugin<TStrategy>? Load<TStrategy>(
        FoundStrategy found,
        StrategyKind kind,
        out PluginFault? fault
    )
        where TStrategy : class
    {
        ArgumentNullException.ThrowIfNull(found);
        if (found.Kind != kind)
        {
            throw new ArgumentException(
                $"The strategy \"{found.Name}\" is of kind {found.Kind}, not {kind}.",
                nameof(found)
            );
        }

        var plugin = LoadedPlugin<TStrategy>.TryMake(found, out var problem);
        fault = problem is null ? null : new(found.File, found.Name, problem);
        return plugin;
    }

    private static string Words(StrategyKind kind) =>
        kind == StrategyKind.Rotation ? "rotation" : "overlap";

    private void Add(PluginCandidate candidate, PluginContents contents)
    {
        faults.AddRange(contents.Faults);
        if (contents.IsLibrary && candidate.IsNamed)
        {
            faults.Add(
                new(
                    candidate.File,
                    null,
                    "holds no strategy: it does not use the strategy contract"
                )
            );
        }

        foreach (var strategy in contents.Strategies)
        {
            if (With(strategy.Kind, strategy.Name) is { } taken)
            {
                faults.Add(
                    new(candidate.File, strategy.Name, $"left out, {taken.File} has the same name")
                );
            }
            else
            {
                strategies.Add(strategy);
            }
        }
    }

    private FoundStrategy? With(StrategyKind kind, string name) =>
        strategies.Find(strategy =>
            strategy.Kind == kind && string.Equals(strategy.Name, name, StringComparison.Ordinal)
        );

    private string Unknown(StrategyKind kind, string name)
    {
        var names = strategies
            .Where(strategy => strategy.Kind == kind)
            .Select(strategy => strategy.Name)
            .ToList();
        var start = $"unknown {Words(kind)} strategy \"{OneLine.Of(name)}\"";
        var other = kind == StrategyKind.Rotation ? StrategyKind.Overlap : StrategyKind.Rotation;
        return With(other, name) is not null
                ? $"\"{name}\" is a strategy for {Words(other)}, not for {Words(kind)}"
            : NearestName.Among(name, names) is { } nearest
                ? $"{start}; did you mean \"{nearest}\"?"
            : names.Count > 0 ? $"{start}; there are {string.Join(", ", names)}"
            : $"{start}; no plugin with a strategy for {Words(kind)} was found";
    }
}

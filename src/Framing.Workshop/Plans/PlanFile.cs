using Framing.Sky;
using Framing.Strategies;

namespace Framing.Workshop;

/// <summary>What a plan file asks for, read and checked, defaults filled in (<see cref="PlanDefaults"/>).</summary>
/// <remarks>
/// It remembers where each key stands, so that what only turns out later (a name that the catalogue does not know, a
/// setting that a strategy does not take) can still be said with file, line and column.
/// </remarks>
public sealed class PlanFile
{
    private readonly PlanNotes notes;

    internal PlanFile(PlanNotes notes) => this.notes = notes;

    /// <summary>The file as the user named it.</summary>
    public required string Path { get; init; }

    /// <summary>True for the example that the program carries.</summary>
    public required bool IsBuiltIn { get; init; }

    /// <summary>The title.</summary>
    public required string Title { get; init; }

    /// <summary>Lens or telescope and camera: [rig].</summary>
    public required Rig Rig { get; init; }

    /// <summary>The guide camera: [guide]; null when the plan has none.</summary>
    public required GuideSection? Guide { get; init; }

    /// <summary>Where the observer stands: [site]; null when the plan has none.</summary>
    public required SiteSection? Site { get; init; }

    /// <summary>What is to be photographed: [target].</summary>
    public required TargetSection Target { get; init; }

    /// <summary>How the camera is turned: [rotation].</summary>
    public required RotationSection Rotation { get; init; }

    /// <summary>How panels are laid out: [mosaic].</summary>
    public required MosaicSection Mosaic { get; init; }

    /// <summary>The mount: [mount].</summary>
    public required MountSection Mount { get; init; }

    /// <summary>The night: [night].</summary>
    public required NightSection Night { get; init; }

    /// <summary>What the sky is like: [sky].</summary>
    public required SkySection Sky { get; init; }

    /// <summary>The battery: [power]; null when the plan has none.</summary>
    public required PowerSection? Power { get; init; }

    /// <summary>Makes the refusal of a value that reading alone could not judge.</summary>
    /// <param name="key">The key with its table (<c>mosaic.grid</c>); items of lists count from 1 (<c>target.names[2]</c>).</param>
    /// <param name="problem">What is wrong and what would be right, without a full stop: "no such object; did you mean …".</param>
    /// <returns>The exception to throw. A key that the plan leaves out stands where its table starts.</returns>
    public PlanFileException Refuse(string key, string problem)
    {
        var (at, written) = notes.Find(key);
        return new([new(at, key, written, written is null ? "(left out): " + problem : problem)]);
    }

    /// <summary>Finds a strategy that the plan names.</summary>
    /// <param name="shelf">The strategies there are.</param>
    /// <param name="kind">Which of the plan's two strategies.</param>
    /// <returns>The strategy, not loaded.</returns>
    /// <exception cref="PlanFileException">There is none of this name; the nearest is suggested.</exception>
    public FoundStrategy StrategyFrom(PluginShelf shelf, StrategyKind kind)
    {
        ArgumentNullException.ThrowIfNull(shelf);
        var (key, choice) =
            kind == StrategyKind.Rotation
                ? ("rotation.strategy", Rotation.Strategy)
                : ("mosaic.overlap", Mosaic.Overlap);
        return shelf.Find(kind, choice.Name, out var problem) ?? throw Refuse(key, problem!);
    }

    /// <summary>The settings that the plan gives to a strategy, defaults filled in.</summary>
    /// <param name="strategy">The strategy that the plan names.</param>
    /// <returns>The settings.</returns>
    /// <exception cref="PlanFileException">A setting is unknown, of the wrong kind, out of range or missing.</exception>
    public StrategySettings SettingsFor(FoundStrategy strategy)
    {
        ArgumentNullException.ThrowIfNull(strategy);
        var (table, choice) =
            strategy.Kind == StrategyKind.Rotation
                ? ("rotation", Rotation.Strategy)
                : ("mosaic", Mosaic.Overlap);
        var reading = StrategySettingsReader.Read(strategy, choice.Settings);
        var declared = strategy.Settings.ToDictionary(
            setting => setting.Name,
            StringComparer.Ordinal
        );
        var faults = reading
            .Faults.Where(fault => declared.ContainsKey(fault.Key))
            .Select(fault =>
                KeyValuePair.Create(
                    fault.Key,
                    $"give {StrategySettingsReader.Wanted(declared[fault.Key])} ({declared[fault.Key].Summary})"
                )
            );
        return SettingFaults(table, declared.Keys, faults) is { } refusal
            ? throw refusal
            : reading.Settings!;
    }

    /// <summary>Judges the settings beside a strategy by what the strategy declares.</summary>
    /// <param name="table"><c>rotation</c> or <c>mosaic</c>.</param>
    /// <param name="declared">The keys that the strategy declares.</param>
    /// <param name="faults">
    /// Declared keys whose values are wrong, or which are missing, each with what would be right.
    /// </param>
    /// <returns>The exception to throw; null when all is well.</returns>
    /// <remarks>
    /// A key that is neither the table's own nor declared is refused with the nearest of both. A declared key that is
    /// named as missing is left out when such a misspelling explains it.
    /// </remarks>
    internal PlanFileException? SettingFaults(
        string table,
        IReadOnlyCollection<string> declared,
        IEnumerable<KeyValuePair<string, string>> faults
    )
    {
        ArgumentNullException.ThrowIfNull(declared);
        ArgumentNullException.ThrowIfNull(faults);
        var settings = string.Equals(table, "rotation", StringComparison.Ordinal)
            ? Rotation.Strategy.Settings
            : Mosaic.Overlap.Settings;
        var known = notes.OwnKeys(table).Concat(declared).ToList();
        var found = new List<PlanFileError>();
        var guesses = new HashSet<string>(StringComparer.Ordinal);
        foreach (
            var key in settings.Keys.Where(key => !declared.Contains(key, StringComparer.Ordinal))
        )
        {
            var at = notes.KeyPlace(table + "." + key);
            found.Add(notes.Unknown(table, key, at, known, out var guess));
            guesses.Add(guess ?? "");
        }

        foreach (var (key, message) in faults)
        {
            var full = table + "." + key;
            var (at, written) = notes.Find(full);
            if (settings.ContainsKey(key))
            {
                found.Add(new(at, full, written, message));
            }
            else if (!guesses.Contains(key) && declared.Contains(key, StringComparer.Ordinal))
            {
                found.Add(new(at, full, null, "is missing; " + message));
            }
        }

        return found.Count == 0 ? null : new(notes.Sorted(found));
    }
}

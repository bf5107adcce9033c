using Framing.Strategies;

namespace Framing.Workshop;

/// <summary>A strategy as its plugin's metadata describes it. None of the plugin's code has run.</summary>
public sealed record FoundStrategy
{
    /// <summary>The name used in plan files.</summary>
    public required string Name { get; init; }

    /// <summary>What it does, one line in plain words.</summary>
    public required string Summary { get; init; }

    /// <summary>Which question it answers.</summary>
    public required StrategyKind Kind { get; init; }

    /// <summary>The settings it declares, in the order of its source.</summary>
    public required IReadOnlyList<StrategySettingAttribute> Settings { get; init; }

    /// <summary>The plugin's file, with its whole path.</summary>
    public required string File { get; init; }

    /// <summary>The version of the contract that the plugin was built against.</summary>
    public required Version ContractVersion { get; init; }

    /// <summary>The plugin's name: that of its file.</summary>
    public string Plugin => Path.GetFileNameWithoutExtension(File);

    /// <summary>The class, as <see cref="System.Reflection.Assembly.GetType(string)"/> wants it.</summary>
    internal string TypeName { get; init; } = "";
}

namespace Framing.Workshop;

/// <summary>What is wrong with a plugin, or what was left out, and why. The rest works on.</summary>
/// <param name="File">The plugin's file or folder.</param>
/// <param name="Strategy">The strategy's name; null when the whole plugin is meant.</param>
/// <param name="Problem">What is wrong, in one line without a full stop.</param>
public sealed record PluginFault(string File, string? Strategy, string Problem)
{
    /// <summary>Everything in one line, for the terminal.</summary>
    public string Line =>
        Strategy is null
            ? $"plugin {File}: {Problem}"
            : $"plugin {File}, strategy \"{Strategy}\": {Problem}";

    /// <summary>The line.</summary>
    public override string ToString() => Line;
}

namespace Framing.Workshop;

/// <summary>A file that may be a plugin.</summary>
/// <param name="File">The file, with its whole path.</param>
/// <param name="IsNamed">True when it bears the name of its folder, so that it can be nothing but a plugin.</param>
internal sealed record PluginCandidate(string File, bool IsNamed);

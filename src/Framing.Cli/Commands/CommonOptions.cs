using System.CommandLine;

namespace Framing.Cli.Commands;

/// <summary>Options that several commands share.</summary>
internal static class CommonOptions
{
    public static Option<string?> Plugins() =>
        new("--plugins") { Description = "A folder with more strategy plugins.", HelpName = "DIR" };

    public static Option<bool> Json() =>
        new("--json") { Description = "Print exactly one JSON document instead of text." };
}

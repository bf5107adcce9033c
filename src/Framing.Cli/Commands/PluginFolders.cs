using Framing.Cli.Terminals;
using Framing.Workshop;

namespace Framing.Cli.Commands;

/// <summary>Opens the plugin folders a command works with and says what was left out.</summary>
internal static class PluginFolders
{
    public static PluginShelf Open(Terminal terminal, string? more)
    {
        if (more is not null && !Directory.Exists(terminal.PathOf(more)))
        {
            throw new InputException(
                $"--plugins: there is no folder \"{more}\"; name one that holds strategy plugins, or leave the option out."
            );
        }

        // A folder that the user names comes first: what lies in it is meant to win.
        var shelf = more is null
            ? PluginShelf.Open(PluginShelf.FolderBesideProgram)
            : PluginShelf.Open(terminal.PathOf(more), PluginShelf.FolderBesideProgram);
        foreach (var fault in shelf.Faults)
        {
            terminal.Error.WriteLine(fault.Line);
        }

        return shelf;
    }
}

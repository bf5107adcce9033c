namespace Framing.Workshop;

/// <summary>Knows where in a folder plugins lie.</summary>
internal static class PluginFolder
{
    private static readonly EnumerationOptions Anything = new() { IgnoreInaccessible = true };

    /// <summary>The files of a folder that may be plugins, in the order of their names.</summary>
    /// <param name="folder">The folder, with its whole path.</param>
    /// <param name="faults">Receives what cannot be looked through.</param>
    /// <returns>Each file, and whether it bears the name of its folder, so that it can be nothing but a plugin.</returns>
    public static IEnumerable<(string File, bool IsNamed)> Files(
        string folder,
        List<PluginFault> faults
    )
    {
        if (!Directory.Exists(folder))
        {
            if (folder != Path.GetFullPath(PluginShelf.FolderBesideProgram))
            {
                faults.Add(new(folder, null, "there is no such folder"));
            }

            return [];
        }

        var files = Dlls(folder).Select(file => (file, false));
        foreach (var inner in Directory.EnumerateDirectories(folder, "*", Anything))
        {
            var named = Path.Combine(inner, Path.GetFileName(inner) + ".dll");
            files = files.Concat(
                File.Exists(named) ? [(named, true)] : Dlls(inner).Select(file => (file, false))
            );
        }

        return files.OrderBy(candidate => candidate.Item1, StringComparer.Ordinal);
    }

    /// <summary>The DLLs that lie in a folder itself, without copies of what the program brings.</summary>
    private static IEnumerable<string> Dlls(string folder) =>
        Directory
            .EnumerateFiles(folder, "*.dll", Anything)
            .Where(file => !PluginContext.IsOfTheProgram(Path.GetFileNameWithoutExtension(file)));
}

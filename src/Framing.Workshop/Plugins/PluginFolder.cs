namespace Framing.Workshop;

/// <summary>Knows where in a folder plugins lie.</summary>
internal static class PluginFolder
{
    private static readonly EnumerationOptions Anything = new() { IgnoreInaccessible = true };

    /// <summary>The files of a folder that may be plugins, in the order of their names.</summary>
    /// <param name="folder">The folder, with its whole path.</param>
    /// <param name="faults">Receives what cannot be looked through.</param>
    /// <returns>The files.</returns>
    public static List<PluginCandidate> Files(string folder, List<PluginFault> faults)
    {
        var files = new List<PluginCandidate>();
        if (Directory.Exists(folder))
        {
            AddDlls(folder, files);
            foreach (var inner in Directory.GetDirectories(folder, "*", Anything))
            {
                var named = Path.Combine(inner, Path.GetFileName(inner) + ".dll");
                if (File.Exists(named))
                {
                    files.Add(new(named, IsNamed: true));
                }
                else
                {
                    AddDlls(inner, files);
                }
            }

            files.Sort((left, right) => string.CompareOrdinal(left.File, right.File));
        }
        else if (folder != Path.GetFullPath(PluginShelf.FolderBesideProgram))
        {
            faults.Add(new(folder, null, "there is no such folder"));
        }

        return files;
    }

    /// <summary>Adds the DLLs that lie in a folder itself, without copies of what the program brings.</summary>
    private static void AddDlls(string folder, List<PluginCandidate> files)
    {
        foreach (var file in Directory.GetFiles(folder, "*.dll", Anything))
        {
            if (!PluginContext.IsOfTheProgram(Path.GetFileNameWithoutExtension(file)))
            {
                files.Add(new(file, IsNamed: false));
            }
        }
    }
}

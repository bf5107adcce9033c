namespace Framing.Workshop;

/// <summary>Judges whether files lie in a folder, links followed.</summary>
internal static class DeskFolder
{
    /// <summary>The path with every symbolic link on the way followed; parts that do not exist stay as they are.</summary>
    public static string RealPath(string path)
    {
        var full = Path.GetFullPath(path);
        var root = Path.GetPathRoot(full)!;
        var real = root;
        foreach (
            var step in full[root.Length..]
                .Split(Path.DirectorySeparatorChar, StringSplitOptions.RemoveEmptyEntries)
        )
        {
            real = Path.Combine(real, step);
            FileSystemInfo info = Directory.Exists(real)
                ? new DirectoryInfo(real)
                : new FileInfo(real);
            if (info.LinkTarget is not null)
            {
                real = info.ResolveLinkTarget(returnFinalTarget: true)?.FullName ?? real;

                // The target itself may lie behind links.
                real = string.Equals(real, full, StringComparison.Ordinal) ? real : RealPath(real);
            }
        }

        return real;
    }

    /// <summary>True when a real path lies in a real folder, however deep.</summary>
    public static bool IsInside(string folder, string file) =>
        file.StartsWith(
            folder.EndsWith(Path.DirectorySeparatorChar)
                ? folder
                : folder + Path.DirectorySeparatorChar,
            StringComparison.Ordinal
        );
}

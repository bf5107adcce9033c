namespace Framing.Workshop;

/// <summary>Joins file names as the user wrote them.</summary>
internal static class PlanPaths
{
    /// <summary>A file named in another file.</summary>
    /// <param name="folder">The folder of the file that names it; empty for the current one.</param>
    /// <param name="name">The name as written, relative or not.</param>
    /// <returns>The path without needless steps: "samples" and "../demo-data/a.toml" make "demo-data/a.toml".</returns>
    public static string Join(string folder, string name)
    {
        var path = Path.Combine(folder, name).Replace('\\', '/');
        var steps = new List<string>();
        foreach (var step in path.Split('/'))
        {
            switch (step)
            {
                case ".":
                    break;
                case ".." when steps is [.., not ".."] && steps[^1].Length > 0:
                    steps.RemoveAt(steps.Count - 1);
                    break;
                default:
                    steps.Add(step);
                    break;
            }
        }

        return string.Join('/', steps);
    }

    /// <summary>The folder of a path; empty for the current one.</summary>
    public static string Folder(string path) => Path.GetDirectoryName(path) ?? "";
}

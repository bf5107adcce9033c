namespace Framing.Workshop.Tests;

/// <summary>Where the project's own files lie.</summary>
internal static class TestFolders
{
    /// <summary>The folder of Framing.sln.</summary>
    public static string Root { get; } = FindRoot();

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Framing.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName
            ?? throw new InvalidOperationException("The tests run inside a checkout.");
    }
}

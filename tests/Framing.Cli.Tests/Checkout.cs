namespace Framing.Cli.Tests;

/// <summary>The checkout that the tests were built in.</summary>
internal static class Checkout
{
    public static string Root { get; } = FindRoot();

    /// <summary>The built program beside which these tests were built, of the same configuration.</summary>
    public static string Program { get; } =
        Path.Combine(
            Root,
            "src",
            "Framing.Cli",
            "bin",
            new DirectoryInfo(AppContext.BaseDirectory.TrimEnd(Path.DirectorySeparatorChar))
                .Parent!
                .Name,
            "net10.0",
            "framing.dll"
        );

    public static string At(string path) => Path.Combine(Root, path);

    private static string FindRoot()
    {
        for (
            var folder = new DirectoryInfo(AppContext.BaseDirectory);
            folder is not null;
            folder = folder.Parent
        )
        {
            if (File.Exists(Path.Combine(folder.FullName, "Framing.sln")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException(
            $"Framing.sln was not found above {AppContext.BaseDirectory}."
        );
    }
}

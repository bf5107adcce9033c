namespace Framing.Workshop.Tests;

/// <summary>The plugins that the build lays beside the tests.</summary>
internal static class Shelves
{
    public static string TestPlugins => Path.Combine(AppContext.BaseDirectory, "test-plugins");

    public static string SamplePlugins => Path.Combine(AppContext.BaseDirectory, "sample-plugins");

    public static string Plugin(string name) => Path.Combine(TestPlugins, name, name + ".dll");

    public static FoundStrategy Find(PluginShelf shelf, StrategyKind kind, string name)
    {
        var found = shelf.Find(kind, name, out var problem);
        Assert.Null(problem);
        Assert.NotNull(found);
        return found;
    }

    /// <summary>A strategy of the test plugins or of the program's own.</summary>
    public static FoundStrategy Find(StrategyKind kind, string name) =>
        Find(PluginShelf.Open(PluginShelf.FolderBesideProgram, TestPlugins), kind, name);
}

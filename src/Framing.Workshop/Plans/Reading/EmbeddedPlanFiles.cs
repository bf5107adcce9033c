namespace Framing.Workshop;

/// <summary>Reads the example that the program carries: the same files that lie in samples/ and demo-data/.</summary>
internal sealed class EmbeddedPlanFiles : PlanFiles
{
    /// <summary>The plan that is taken when none is named.</summary>
    public const string Plan = "samples/two-panels.toml";

    /// <inheritdoc/>
    protected override Stream Open(string path) =>
        typeof(EmbeddedPlanFiles).Assembly.GetManifestResourceStream(path)
        ?? throw new FileNotFoundException($"The program carries no file {path}.", path);
}

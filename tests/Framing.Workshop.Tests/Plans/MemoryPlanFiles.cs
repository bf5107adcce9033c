using System.Text;

namespace Framing.Workshop.Tests;

/// <summary>Files of a plan that lie in memory.</summary>
internal sealed class MemoryPlanFiles : PlanFiles
{
    private readonly Dictionary<string, byte[]> files = new(StringComparer.Ordinal);

    /// <summary>A plan of its own, called plan.toml.</summary>
    public static PlanFile Plan(string text) =>
        new MemoryPlanFiles().With("plan.toml", text).Read();

    /// <summary>The refusal of a plan.</summary>
    public static PlanFileException Refused(string text) =>
        new MemoryPlanFiles().With("plan.toml", text).RefusedPlan();

    public MemoryPlanFiles With(string path, string text) =>
        With(path, Encoding.UTF8.GetBytes(text));

    public MemoryPlanFiles With(string path, byte[] bytes)
    {
        files[path] = bytes;
        return this;
    }

    public PlanFile Read(string path = "plan.toml") =>
        PlanFileReader.Read(this, path, builtIn: false);

    public PlanFileException RefusedPlan(string path = "plan.toml") =>
        Assert.Throws<PlanFileException>(() => Read(path));

    protected override Stream Open(string path) =>
        files.TryGetValue(path, out var bytes)
            ? new MemoryStream(bytes, writable: false)
            : throw new FileNotFoundException("No such file in memory.", path);
}

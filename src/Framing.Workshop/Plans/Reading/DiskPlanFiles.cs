namespace Framing.Workshop;

/// <summary>Reads the files of a plan from the disk.</summary>
internal sealed class DiskPlanFiles : PlanFiles
{
    /// <inheritdoc/>
    protected override Stream Open(string path) =>
        new FileStream(
            path,
            FileMode.Open,
            FileAccess.Read,
            FileShare.ReadWrite | FileShare.Delete
        );
}

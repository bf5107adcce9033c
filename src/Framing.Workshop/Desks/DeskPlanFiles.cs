using System.Text;

namespace Framing.Workshop;

/// <summary>Reads the files of a plan on the desk: its own text from memory, others from its folder alone.</summary>
/// <remarks>
/// A plan that is changed through the page could name any file, and a refusal quotes what stands in it. Beside the plan's
/// own folder only those files may be read that the plan on the disk names: whoever put it there had them in hand.
/// Symbolic links are followed before a place is judged.
/// </remarks>
internal sealed class DeskPlanFiles(string path, string text, string folder) : PlanFiles
{
    private readonly HashSet<string> read = new(StringComparer.Ordinal);

    /// <summary>Files outside the folder that may be read, as real paths; null to allow all and note them.</summary>
    public IReadOnlySet<string>? Allowed { get; init; }

    /// <summary>What was read beside the plan itself, as real paths.</summary>
    public IReadOnlySet<string> Taken => read;

    /// <inheritdoc/>
    protected override Stream Open(string file)
    {
        if (string.Equals(file, path, StringComparison.Ordinal))
        {
            return new MemoryStream(Encoding.UTF8.GetBytes(text), writable: false);
        }

        var real = DeskFolder.RealPath(file);
        if (
            Allowed is { } allowed
            && !allowed.Contains(real)
            && !DeskFolder.IsInside(DeskFolder.RealPath(folder), real)
        )
        {
            throw new UnauthorizedAccessException("The file lies outside the plan's folder.");
        }

        read.Add(real);
        return new FileStream(
            real,
            FileMode.Open,
            FileAccess.Read,
            FileShare.ReadWrite | FileShare.Delete
        );
    }
}

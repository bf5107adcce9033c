namespace Framing.Workshop.Tests;

/// <summary>A folder of a test's own, gone afterwards.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("framing-").FullName;

    /// <summary>A path in the folder.</summary>
    public string this[string name] => System.IO.Path.Combine(Path, name);

    /// <summary>Everything in the folder, by relative path in order.</summary>
    public IReadOnlyList<string> Contents =>
        [
            .. Directory
                .EnumerateFileSystemEntries(
                    Path,
                    "*",
                    new EnumerationOptions
                    {
                        RecurseSubdirectories = true,
                        AttributesToSkip = FileAttributes.None,
                    }
                )
                .Select(entry => System.IO.Path.GetRelativePath(Path, entry).Replace('\\', '/'))
                .Order(StringComparer.Ordinal),
        ];

    public void Dispose() => Directory.Delete(Path, recursive: true);
}

namespace Framing.Fits;

/// <summary>Writes a file so that at every moment either the old one or the whole new one is there.</summary>
/// <remarks>The one place of the program that writes files: beside their place first, down to the disk, then renamed.</remarks>
public static class WholeFile
{
    /// <summary>Writes a file.</summary>
    /// <param name="path">Where it shall stand; a file there is replaced when the new one is whole.</param>
    /// <param name="write">Writes the content.</param>
    /// <exception cref="IOException">It cannot be written; the old file is untouched and nothing is left beside it.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written.</exception>
    public static void Write(string path, Action<Stream> write) =>
        Write(path, write, static _ => { });

    /// <summary>Writes a file that is looked at before it takes its place.</summary>
    /// <param name="path">Where it shall stand; a file there is replaced when the new one is whole and let pass.</param>
    /// <param name="write">Writes the content.</param>
    /// <param name="verify">Looks at the file that was written, by its path; throws when it must not take its place.</param>
    /// <exception cref="IOException">It cannot be written; the old file is untouched and nothing is left beside it.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written.</exception>
    public static void Write(string path, Action<Stream> write, Action<string> verify)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        ArgumentNullException.ThrowIfNull(write);
        ArgumentNullException.ThrowIfNull(verify);
        var beside = Path.Combine(
            Path.GetDirectoryName(path) ?? "",
            PartName(Path.GetFileName(path))
        );
        try
        {
            Create(beside, write);
            verify(beside);
            File.Move(beside, path, overwrite: true);
        }
        catch
        {
            Remove(beside);
            throw;
        }
    }

    /// <summary>Writes a file that is not there yet, down to the disk.</summary>
    /// <param name="path">Where; nothing may stand there.</param>
    /// <param name="write">Writes the content.</param>
    /// <exception cref="IOException">It cannot be written, or a file stands there.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written.</exception>
    public static void Create(string path, Action<Stream> write)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        ArgumentNullException.ThrowIfNull(write);
        using var stream = new FileStream(
            path,
            FileMode.CreateNew,
            FileAccess.Write,
            FileShare.None
        );
        write(stream);
        stream.Flush(flushToDisk: true);
    }

    /// <summary>A name for a file or folder in the making: hidden, and unlike any other.</summary>
    /// <param name="name">The plain name it will have.</param>
    /// <returns>A plain name.</returns>
    public static string PartName(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return $".{(name.Length > 40 ? name[..40] : name)}.{Path.GetRandomFileName()[..8]}.part";
    }

    private static void Remove(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // The fault that led here is told already; nothing better can be done than to leave the part.
        }
    }
}

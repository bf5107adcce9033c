namespace Framing.Fits;

/// <summary>Writes a file whole or not at all: beside the place first, then renamed.</summary>
public static class WholeFile
{
    /// <summary>Writes a file.</summary>
    /// <param name="path">Where it shall stand; a file there is replaced when the new one is whole.</param>
    /// <param name="write">Writes the content.</param>
    /// <exception cref="IOException">It cannot be written; nothing is left beside the old file.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written.</exception>
    public static void Write(string path, Action<Stream> write)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        ArgumentNullException.ThrowIfNull(write);
        var beside = $"{path}.{Guid.NewGuid():N}.part";
        try
        {
            using (var stream = new FileStream(beside, FileMode.CreateNew, FileAccess.Write))
            {
                write(stream);
                stream.Flush(flushToDisk: true);
            }

            File.Move(beside, path, overwrite: true);
        }
        catch
        {
            File.Delete(beside);
            throw;
        }
    }
}

namespace Framing.Workshop;

/// <summary>Writes a file so that at every moment either the old one or the whole new one is there.</summary>
public static class WholeFile
{
    /// <summary>Writes a file.</summary>
    /// <param name="path">Where; its folder has to be there.</param>
    /// <param name="content">Its bytes.</param>
    /// <exception cref="InputException">It cannot be written; the old file is untouched.</exception>
    public static void Write(string path, ReadOnlyMemory<byte> content) =>
        Write(path, stream => stream.Write(content.Span));

    /// <summary>Writes a file.</summary>
    /// <param name="path">Where; its folder has to be there.</param>
    /// <param name="write">Writes its bytes.</param>
    /// <exception cref="InputException">It cannot be written; the old file is untouched.</exception>
    public static void Write(string path, Action<Stream> write)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        ArgumentNullException.ThrowIfNull(write);
        if (Directory.Exists(path))
        {
            throw new InputException(
                $"{path}: a folder stands where the file should be; name another file"
            );
        }

        var part = Path.Combine(
            Path.GetDirectoryName(path) ?? "",
            WriteFaults.PartName(Path.GetFileName(path))
        );
        try
        {
            WriteNew(part, path, write);
            WriteFaults.Guard(path, () => File.Move(part, path, overwrite: true));
        }
        finally
        {
            WriteFaults.Forgive(() => File.Delete(part));
        }
    }

    /// <summary>Writes a file that is not there yet, down to the disk.</summary>
    /// <param name="path">Where.</param>
    /// <param name="shown">What the file is called in messages.</param>
    /// <param name="write">Writes its bytes.</param>
    internal static void WriteNew(string path, string shown, Action<Stream> write) =>
        WriteFaults.Guard(
            shown,
            () =>
            {
                using var stream = new FileStream(
                    path,
                    FileMode.CreateNew,
                    FileAccess.Write,
                    FileShare.None
                );
                write(stream);
                stream.Flush(flushToDisk: true);
            }
        );
}

using Framing.Fits;

namespace Framing.Workshop;

/// <summary>Writes a file for the user: whole or not at all, and what keeps it from being written is said in one line.</summary>
public static class OutputFile
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

        WriteFaults.Guard(path, () => WholeFile.Write(path, write));
    }
}

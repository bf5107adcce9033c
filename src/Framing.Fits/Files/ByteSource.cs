using Microsoft.Win32.SafeHandles;

namespace Framing.Fits;

/// <summary>Bytes that are read by place: a file, or a piece of memory that stands for one.</summary>
internal abstract class ByteSource : IDisposable
{
    protected ByteSource(string name) => Name = name;

    /// <summary>The file as the caller named it.</summary>
    public string Name { get; }

    public abstract long Length { get; }

    /// <summary>True where the bytes are unpacked from a compressed file.</summary>
    public virtual bool IsPacked => false;

    /// <summary>Opens a file for reading by place; others may go on reading it. A gzip file is read unpacked.</summary>
    public static ByteSource Open(string path)
    {
        try
        {
            return GzipSource.Unpacked(
                new FileSource(
                    path,
                    File.OpenHandle(
                        path,
                        FileMode.Open,
                        FileAccess.Read,
                        FileShare.ReadWrite | FileShare.Delete
                    )
                )
            );
        }
        catch (Exception problem) when (IsInputProblem(problem))
        {
            throw Refuse(path, problem);
        }
    }

    public static ByteSource Of(string name, ReadOnlyMemory<byte> bytes) =>
        GzipSource.Unpacked(new MemorySource(name, bytes));

    /// <summary>True for the exceptions that mean "this file cannot be had", not "this program is wrong".</summary>
    public static bool IsInputProblem(Exception problem) =>
        problem
            is IOException
                or UnauthorizedAccessException
                or NotSupportedException
                or ArgumentException;

    public static UnreadableFileException Refuse(string path, Exception problem) =>
        problem switch
        {
            FileNotFoundException or DirectoryNotFoundException => new(
                path,
                "file",
                "there is no such file",
                "check the name and the folder",
                problem
            ),
            _ when Directory.Exists(path) => new(
                path,
                "file",
                "this is a folder",
                "name a file",
                problem
            ),
            UnauthorizedAccessException => new(
                path,
                "file",
                "it may not be read",
                "check its permissions",
                problem
            ),
            _ => new(path, "file", "it cannot be read", problem.Message.TrimEnd('.'), problem),
        };

    /// <summary>Fills a buffer from a place. The caller has held the place against <see cref="Length"/>.</summary>
    public abstract void ReadExactly(long offset, Span<byte> buffer);

    public abstract void Dispose();

    protected UnreadableFileException Shrunk(long offset) =>
        new(
            Name,
            "file",
            FormattableString.Invariant($"it ended at byte {offset} while it was being read"),
            "wait until it is written whole"
        );

    private sealed class FileSource : ByteSource
    {
        private readonly SafeFileHandle handle;

        public FileSource(string name, SafeFileHandle handle)
            : base(name)
        {
            this.handle = handle;
            Length = RandomAccess.GetLength(handle);
        }

        public override long Length { get; }

        public override void ReadExactly(long offset, Span<byte> buffer)
        {
            try
            {
                while (buffer.Length > 0)
                {
                    var read = RandomAccess.Read(handle, buffer, offset);
                    if (read <= 0)
                    {
                        throw Shrunk(offset);
                    }

                    buffer = buffer[read..];
                    offset += read;
                }
            }
            catch (Exception problem) when (IsInputProblem(problem))
            {
                throw Refuse(Name, problem);
            }
        }

        public override void Dispose() => handle.Dispose();
    }

    private sealed class MemorySource(string name, ReadOnlyMemory<byte> bytes) : ByteSource(name)
    {
        public override long Length => bytes.Length;

        public override void ReadExactly(long offset, Span<byte> buffer)
        {
            if (offset < 0 || offset + buffer.Length > bytes.Length)
            {
                throw Shrunk(offset);
            }

            bytes.Span.Slice((int)offset, buffer.Length).CopyTo(buffer);
        }

        public override void Dispose() { }
    }
}

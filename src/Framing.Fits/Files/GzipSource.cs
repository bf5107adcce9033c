using System.IO.Compression;

namespace Framing.Fits;

/// <summary>The bytes inside a gzip file, unpacked as they are asked for; nothing of them is kept.</summary>
/// <remarks>
/// Opening unpacks the file once, to know how many bytes it holds: what its own end says of that is no promise. Reading on
/// from where the last reading ended costs nothing more; reading from an earlier place starts again at the front.
/// </remarks>
internal sealed class GzipSource : ByteSource
{
    /// <summary>A file that grows beyond this is not unpacked: so many bytes take some seconds.</summary>
    public const long MostBytes = 2L << 30;

    private readonly ByteSource packed;
    private readonly Lock gate = new();
    private readonly byte[] skipped = new byte[128 * 1024];
    private GZipStream? stream;
    private long position;

    private GzipSource(ByteSource packed)
        : base(packed.Name)
    {
        this.packed = packed;
        Length = Count();
    }

    public override long Length { get; }

    public override bool IsPacked => true;

    /// <summary>The source itself, or the bytes inside it when it is a gzip file.</summary>
    public static ByteSource Unpacked(ByteSource source)
    {
        try
        {
            Span<byte> start = stackalloc byte[2];
            if (source.Length < 2)
            {
                return source;
            }

            source.ReadExactly(0, start);
            return IsGzip(start) ? new GzipSource(source) : source;
        }
        catch
        {
            source.Dispose();
            throw;
        }
    }

    /// <summary>True when bytes are the start of a gzip file.</summary>
    public static bool IsGzip(ReadOnlySpan<byte> start) => start is [0x1F, 0x8B, ..];

    public override void ReadExactly(long offset, Span<byte> buffer)
    {
        if (buffer.IsEmpty)
        {
            return;
        }

        if (offset < 0 || offset + buffer.Length > Length)
        {
            throw Shrunk(offset);
        }

        lock (gate)
        {
            if (stream is null || offset < position)
            {
                Restart();
            }

            while (position < offset)
            {
                Fill(skipped.AsSpan(0, (int)Math.Min(skipped.Length, offset - position)));
            }

            Fill(buffer);
        }
    }

    public override void Dispose()
    {
        stream?.Dispose();
        packed.Dispose();
    }

    private void Restart()
    {
        stream?.Dispose();
        stream = new(new SourceStream(packed), CompressionMode.Decompress);
        position = 0;
    }

    private void Fill(Span<byte> buffer)
    {
        try
        {
            stream!.ReadExactly(buffer);
            position += buffer.Length;
        }
        catch (Exception problem)
            when (problem is InvalidDataException or EndOfStreamException or IOException)
        {
            throw Damaged(problem);
        }
    }

    private long Count()
    {
        long count = 0;
        try
        {
            Restart();
            for (int read; (read = stream!.Read(skipped)) > 0; count += read)
            {
                if (count > MostBytes)
                {
                    throw new UnreadableFileException(
                        Name,
                        "file",
                        "unpacked it would be larger than 2 GiB",
                        "unpack it first"
                    );
                }
            }
        }
        catch (Exception problem) when (problem is InvalidDataException or IOException)
        {
            throw Damaged(problem);
        }

        // Data that end early are no fault to the library; where nothing at all came out, it is one to us.
        stream.Dispose();
        stream = null;
        return count > 0 ? count : throw Damaged(null);
    }

    private UnreadableFileException Damaged(Exception? problem) =>
        new(
            Name,
            "gzip data",
            "they are damaged or truncated",
            "copy the file again from where it came",
            problem
        );
}

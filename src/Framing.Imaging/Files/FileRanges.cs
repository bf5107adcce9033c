namespace Framing.Imaging;

/// <summary>Pieces of a file as one stream that can be read and placed.</summary>
internal sealed class FileRanges : Stream
{
    private readonly Stream file;
    private readonly IReadOnlyList<(long Start, long Length)> ranges;
    private readonly long[] ends;
    private long position;

    /// <summary>Joins pieces.</summary>
    /// <param name="file">The file; it stays open.</param>
    /// <param name="ranges">Where each piece starts in the file, and its bytes.</param>
    public FileRanges(Stream file, IReadOnlyList<(long Start, long Length)> ranges)
    {
        this.file = file;
        this.ranges = ranges;
        ends = new long[ranges.Count];
        long end = 0;
        for (var i = 0; i < ends.Length; i++)
        {
            end += ranges[i].Length;
            ends[i] = end;
        }
    }

    public override bool CanRead => true;

    public override bool CanSeek => true;

    public override bool CanWrite => false;

    public override long Length => ends.Length == 0 ? 0 : ends[^1];

    public override long Position
    {
        get => position;
        set
        {
            ArgumentOutOfRangeException.ThrowIfNegative(value);
            position = value;
        }
    }

    public override int Read(Span<byte> buffer)
    {
        if (position >= Length || buffer.IsEmpty)
        {
            return 0;
        }

        // The first piece that ends behind the place; an end that is met exactly belongs to the piece before.
        var at = Array.BinarySearch(ends, position);
        at = at < 0 ? ~at : at + 1;
        while (ends[at] <= position)
        {
            at++;
        }

        var (start, length) = ranges[at];
        file.Position = start + length - (ends[at] - position);
        var read = file.Read(buffer[..(int)Math.Min(buffer.Length, ends[at] - position)]);
        position += read;
        return read;
    }

    public override int Read(byte[] buffer, int offset, int count) =>
        Read(buffer.AsSpan(offset, count));

    public override long Seek(long offset, SeekOrigin origin) =>
        Position =
            offset
            + origin switch
            {
                SeekOrigin.Begin => 0,
                SeekOrigin.Current => position,
                _ => Length,
            };

    public override void Flush() { }

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) =>
        throw new NotSupportedException();
}

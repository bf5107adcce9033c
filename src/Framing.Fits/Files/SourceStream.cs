namespace Framing.Fits;

/// <summary>The bytes of a source one after another, for a library that wants a stream.</summary>
internal sealed class SourceStream(ByteSource source) : Stream
{
    private long position;

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => source.Length;

    public override long Position
    {
        get => position;
        set => throw new NotSupportedException();
    }

    public override int Read(Span<byte> buffer)
    {
        var size = (int)Math.Min(buffer.Length, source.Length - position);
        source.ReadExactly(position, buffer[..size]);
        position += size;
        return size;
    }

    public override int Read(byte[] buffer, int offset, int count) =>
        Read(buffer.AsSpan(offset, count));

    public override void Flush() { }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) =>
        throw new NotSupportedException();
}

using System.Buffers.Binary;
using BitMiracle.LibTiff.Classic;

namespace Framing.Imaging;

/// <summary>The file as the library sees it: its own bytes, with a directory of ours that holds nothing but checked tags.</summary>
/// <remarks>
/// The library never meets the file's own directories, so that neither loops nor wild tags reach it; and it reads the wide
/// layout of both byte orders, which by itself it does not (2.4.660 refuses the big-endian one).
/// </remarks>
internal sealed class TiffView : TiffStream
{
    private readonly Stream stream;
    private readonly byte[] head = new byte[8];
    private readonly byte[] tail;
    private readonly long tailStart;
    private long position;

    public TiffView(Stream stream, TiffLayout layout)
    {
        this.stream = stream;
        tailStart = (stream.Length + 1) & ~1L;

        // The predictor of IEEE numbers stores bytes in one order whatever the file's is, and the library turns them once too
        // often where the file's is the other one.
        var bigEndian = layout.Tags.BigEndian && layout.Predictor != 3;
        (bigEndian ? "MM\0*"u8 : "II*\0"u8).CopyTo(head);
        Put(head.AsSpan(4), 4, tailStart, bigEndian);
        tail = Directory(layout, tailStart, bigEndian);
    }

    public override int Read(object clientData, byte[] buffer, int offset, int count)
    {
        var target = buffer.AsSpan(offset, count);
        var done = 0;
        while (done < count)
        {
            var rest = target[done..];
            int got;
            if (position < head.Length)
            {
                got = Copy(head.AsSpan((int)position), rest);
            }
            else if (position < stream.Length)
            {
                stream.Position = position;
                got = stream.Read(rest);
            }
            else
            {
                var at = position - tailStart;
                got =
                    at < 0 ? 1
                    : at < tail.Length ? Copy(tail.AsSpan((int)at), rest)
                    : 0;
            }

            if (got == 0)
            {
                break;
            }

            position += got;
            done += got;
        }

        return done;
    }

    public override long Seek(object clientData, long offset, SeekOrigin origin) =>
        position = origin switch
        {
            SeekOrigin.Begin => offset,
            SeekOrigin.Current => position + offset,
            _ => Size(clientData) + offset,
        };

    /// <summary>The stream is the caller's: it stays open.</summary>
    public override void Close(object clientData) { }

    public override long Size(object clientData) => tailStart + tail.Length;

    private static int Copy(ReadOnlySpan<byte> from, Span<byte> to)
    {
        var count = Math.Min(from.Length, to.Length);
        from[..count].CopyTo(to);
        return count;
    }

    private static byte[] Directory(TiffLayout layout, long start, bool bigEndian)
    {
        // Tag, bytes a value, values; in the order of their numbers.
        var entries = new List<(int Tag, int Size, long[] Values)>
        {
            (256, 4, [layout.Width]),
            (257, 4, [layout.Height]),
            (258, 2, Repeated(layout.Bits, layout.Samples)),
            (259, 2, [layout.Compression]),
            (262, 2, [layout.Photometric == 2 ? 2 : 1]),
            (266, 2, [layout.Tags.Number(266) == 2 ? 2 : 1]),
            (277, 2, [layout.Samples]),
            (284, 2, [layout.Planar ? 2 : 1]),
            (317, 2, [layout.Predictor]),
            (339, 2, Repeated(layout.Kind, layout.Samples)),
        };
        if (layout.Predictor == 1)
        {
            entries.RemoveAll(entry => entry.Tag == 317);
        }

        if (layout.Tiled)
        {
            entries.Add((322, 4, [layout.TileWidth]));
            entries.Add((323, 4, [layout.TileHeight]));
            entries.Add((324, 4, layout.Starts));
            entries.Add((325, 4, layout.Lengths));
        }
        else
        {
            entries.Add((273, 4, layout.Starts));
            entries.Add((278, 4, [layout.TileHeight]));
            entries.Add((279, 4, layout.Lengths));
        }

        entries.Sort((one, other) => one.Tag.CompareTo(other.Tag));
        var fixedBytes = 2 + (entries.Count * 12) + 4;
        var extra = entries.Sum(entry => Outside(entry.Size, entry.Values));
        var bytes = new byte[fixedBytes + extra];
        Put(bytes, 2, entries.Count, bigEndian);
        var free = fixedBytes;
        for (var i = 0; i < entries.Count; i++)
        {
            var (tag, size, values) = entries[i];
            var entry = bytes.AsSpan(2 + (i * 12), 12);
            Put(entry, 2, tag, bigEndian);
            Put(entry[2..], 2, size == 2 ? 3 : 4, bigEndian);
            Put(entry[4..], 4, values.Length, bigEndian);
            var outside = Outside(size, values);
            var target = outside == 0 ? entry[8..] : bytes.AsSpan(free);
            for (var k = 0; k < values.Length; k++)
            {
                Put(target[(k * size)..], size, values[k], bigEndian);
            }

            if (outside > 0)
            {
                Put(entry[8..], 4, start + free, bigEndian);
                free += outside;
            }
        }

        return bytes;
    }

    private static long[] Repeated(long value, int count)
    {
        var values = new long[count];
        Array.Fill(values, value);
        return values;
    }

    /// <summary>Bytes of values that do not fit into their entry, kept even.</summary>
    private static int Outside(int size, long[] values) =>
        size * values.Length <= 4 ? 0 : ((size * values.Length) + 1) & ~1;

    private static void Put(Span<byte> bytes, int size, long value, bool bigEndian)
    {
        switch (size, bigEndian)
        {
            case (2, true):
                BinaryPrimitives.WriteUInt16BigEndian(bytes, (ushort)value);
                break;
            case (2, false):
                BinaryPrimitives.WriteUInt16LittleEndian(bytes, (ushort)value);
                break;
            case (_, true):
                BinaryPrimitives.WriteUInt32BigEndian(bytes, (uint)value);
                break;
            default:
                BinaryPrimitives.WriteUInt32LittleEndian(bytes, (uint)value);
                break;
        }
    }
}

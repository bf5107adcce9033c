using System.Buffers.Binary;
using System.Text;
using Framing.Fits;

namespace Framing.Imaging;

/// <summary>A directory of tags as TIFF and Exif have it, each entry held against the file before it is used.</summary>
/// <remarks>Source: TIFF 6.0, section 2; for 8-byte offsets the BigTIFF layout as libtiff documents it.</remarks>
internal sealed class TagDirectory
{
    private const int MostValues = 16_000_000;

    private readonly string name;
    private readonly Stream stream;
    private readonly bool wide;
    private readonly Dictionary<int, (int Type, long Count, long Start)> entries = [];

    private TagDirectory(string name, Stream stream, bool bigEndian, bool wide)
    {
        this.name = name;
        this.stream = stream;
        BigEndian = bigEndian;
        this.wide = wide;
    }

    /// <summary>True when numbers are stored with their highest byte first.</summary>
    public bool BigEndian { get; }

    /// <summary>Where the next directory stands; 0 for none.</summary>
    public long Next { get; private set; }

    /// <summary>Reads the first directory of a stream that begins with the header of a TIFF file.</summary>
    /// <param name="name">The file, for messages.</param>
    /// <param name="stream">The whole of it.</param>
    /// <param name="strict">True to refuse an entry whose values lie outside the file, false to leave it out.</param>
    public static TagDirectory Read(string name, Stream stream, bool strict)
    {
        Span<byte> head = stackalloc byte[16];
        stream.Position = 0;
        var got = stream.ReadAtLeast(head, head.Length, throwOnEndOfStream: false);
        if (got < 8)
        {
            throw CutShort(name, stream.Length);
        }

        var directory = new TagDirectory(
            name,
            stream,
            head[0] == (byte)'M',
            head[2] == 43 || head[3] == 43
        );
        long start = directory.BigEndian
            ? BinaryPrimitives.ReadUInt32BigEndian(head[4..])
            : BinaryPrimitives.ReadUInt32LittleEndian(head[4..]);
        if (directory.wide)
        {
            start =
                got < 16 ? throw CutShort(name, stream.Length)
                : directory.BigEndian ? BinaryPrimitives.ReadInt64BigEndian(head[8..])
                : BinaryPrimitives.ReadInt64LittleEndian(head[8..]);
        }

        directory.Fill(start, strict);
        return directory;
    }

    /// <summary>Reads the directory an entry points to, or nothing.</summary>
    public TagDirectory? Child(int tag)
    {
        if (Number(tag) is not { } start)
        {
            return null;
        }

        var child = new TagDirectory(name, stream, BigEndian, wide);
        child.Fill(start, strict: false);
        return child;
    }

    public bool Has(int tag) => entries.ContainsKey(tag);

    /// <summary>The whole numbers of an entry; none when it is missing or holds something else.</summary>
    public long[] Numbers(int tag)
    {
        if (
            !entries.TryGetValue(tag, out var entry)
            || entry.Type is not (1 or 3 or 4 or 13 or 16 or 18)
        )
        {
            return [];
        }

        if (entry.Count > MostValues)
        {
            throw Refuse(tag, FormattableString.Invariant($"{entry.Count} values"));
        }

        var size = SizeOf(entry.Type);
        var bytes = Bytes(entry.Start, (int)entry.Count * size);
        var numbers = new long[entry.Count];
        for (var i = 0; i < numbers.Length; i++)
        {
            numbers[i] = Whole(bytes.AsSpan(i * size, size));
        }

        return numbers;
    }

    /// <summary>The first whole number of an entry.</summary>
    public long? Number(int tag) => Numbers(tag) is [var first, ..] ? first : null;

    /// <summary>The first number of an entry of fractions.</summary>
    public double? Fraction(int tag)
    {
        if (
            !entries.TryGetValue(tag, out var entry)
            || entry.Type is not (5 or 10)
            || entry.Count < 1
        )
        {
            return null;
        }

        var bytes = Bytes(entry.Start, 8);
        var (over, under) = (Whole(bytes.AsSpan(0, 4)), Whole(bytes.AsSpan(4, 4)));
        return entry.Type == 5 ? over / (double)under : (int)(uint)over / (double)(int)(uint)under;
    }

    /// <summary>The text of an entry, without the zero at its end.</summary>
    public string? Text(int tag) =>
        entries.TryGetValue(tag, out var entry) && entry.Type == 2 && entry.Count is > 0 and < 1000
            ? Encoding.ASCII.GetString(Bytes(entry.Start, (int)entry.Count)).Split('\0')[0].Trim()
            : null;

    private static int SizeOf(int type) =>
        type switch
        {
            1 or 2 or 6 or 7 => 1,
            3 or 8 => 2,
            4 or 9 or 11 or 13 => 4,
            5 or 10 or 12 or 16 or 17 or 18 => 8,
            _ => 0,
        };

    private static UnreadableFileException CutShort(string name, long length) =>
        new(
            name,
            "file",
            FormattableString.Invariant($"cut short after {length} bytes"),
            "copy it again from where it came"
        );

    private void Fill(long start, bool strict)
    {
        var countSize = wide ? 8 : 2;
        var entrySize = wide ? 20 : 12;
        if (start < 8 || start > stream.Length - countSize)
        {
            throw new UnreadableFileException(
                name,
                "directory",
                FormattableString.Invariant(
                    $"it is said to begin at byte {start} of {stream.Length}"
                ),
                "the file is cut short or damaged; copy it again from where it came"
            );
        }

        var count = Whole(Bytes(start, countSize));
        if (count is < 1 or > 65535 || start + countSize + (count * entrySize) > stream.Length)
        {
            throw new UnreadableFileException(
                name,
                "directory",
                FormattableString.Invariant(
                    $"it is said to have {(ulong)count} entries, the file has {stream.Length} bytes"
                ),
                "the file is cut short or damaged; copy it again from where it came"
            );
        }

        var bytes = Bytes(start + countSize, (int)count * entrySize);
        var inline = wide ? 8 : 4;
        var total = 0.0;
        for (var i = 0; i < count; i++)
        {
            var entry = bytes.AsSpan(i * entrySize, entrySize);
            var tag = (int)Whole(entry[..2]);
            var type = (int)Whole(entry[2..4]);
            var values = Whole(entry.Slice(4, inline));
            var size = (double)(ulong)values * SizeOf(type);
            var place =
                size <= inline
                    ? start + countSize + (i * entrySize) + 4 + inline
                    : Whole(entry[(4 + inline)..]);
            total += size;
            if (place < 0 || place + size > stream.Length || total > stream.Length)
            {
                if (strict)
                {
                    throw Refuse(tag, FormattableString.Invariant($"{size:0} bytes of values"));
                }

                continue;
            }

            if (!entries.TryAdd(tag, (type, values, place)) && strict)
            {
                throw Refuse(tag, "it stands there twice");
            }
        }

        var end = start + countSize + (count * entrySize);
        Next = end + inline <= stream.Length ? Whole(Bytes(end, inline)) : 0;
    }

    private UnreadableFileException Refuse(int tag, string found) =>
        new(
            name,
            FormattableString.Invariant($"tag {tag}"),
            FormattableString.Invariant($"{found} in a file of {stream.Length} bytes"),
            "the file is cut short or damaged; copy it again from where it came"
        );

    private byte[] Bytes(long start, int count)
    {
        var bytes = new byte[count];
        stream.Position = start;
        return stream.ReadAtLeast(bytes, count, throwOnEndOfStream: false) == count
            ? bytes
            : throw CutShort(name, stream.Length);
    }

    private long Whole(ReadOnlySpan<byte> bytes) =>
        (bytes.Length, BigEndian) switch
        {
            (1, _) => bytes[0],
            (2, true) => BinaryPrimitives.ReadUInt16BigEndian(bytes),
            (2, false) => BinaryPrimitives.ReadUInt16LittleEndian(bytes),
            (4, true) => BinaryPrimitives.ReadUInt32BigEndian(bytes),
            (4, false) => BinaryPrimitives.ReadUInt32LittleEndian(bytes),
            (_, true) => BinaryPrimitives.ReadInt64BigEndian(bytes),
            (_, false) => BinaryPrimitives.ReadInt64LittleEndian(bytes),
        };
}

using System.Buffers.Binary;
using System.IO.Compression;

namespace Framing.Fits;

/// <summary>Unpacks the tiles of a compressed image to the bytes that the plain image would hold.</summary>
/// <remarks>Source: FITS Standard 4.0, sections 10.1 to 10.4.</remarks>
internal sealed class TileReader
{
    private readonly string name;
    private readonly FitsTable table;
    private readonly TileLayout layout;
    private readonly FitsColumn? packed;
    private readonly FitsColumn? packedWhole;
    private readonly FitsColumn? plain;
    private readonly FitsColumn? scales;
    private readonly FitsColumn? zeros;
    private readonly FitsColumn? blanks;

    public TileReader(string name, FitsTable table, TileLayout layout)
    {
        this.name = name;
        this.table = table;
        this.layout = layout;
        packed = table.Find("COMPRESSED_DATA");
        packedWhole = table.Find("GZIP_COMPRESSED_DATA");
        plain = table.Find("UNCOMPRESSED_DATA");
        scales = Numbers("ZSCALE");
        zeros = Numbers("ZZERO");
        blanks = Numbers("ZBLANK");
        if (packed is null && packedWhole is null && plain is null)
        {
            throw new UnreadableFileException(
                name,
                "TTYPEn",
                "no column is named COMPRESSED_DATA",
                "a compressed image keeps its tiles there"
            );
        }
    }

    /// <summary>Unpacks a tile.</summary>
    /// <param name="number">Which tile, from 0.</param>
    /// <param name="samples">How many samples it holds.</param>
    /// <param name="stored">Takes their bytes, as the plain image would hold them; only ever made larger.</param>
    public void Read(long number, int samples, ref byte[] stored)
    {
        var size = layout.BytesPerSample;
        if (Bytes(packed, number) is { Length: > 0 } bytes)
        {
            Unpack(number, bytes, samples, ref stored);
        }
        else if (Bytes(packedWhole, number) is { Length: > 0 } whole)
        {
            Make(ref stored, samples * (long)size);
            if (Gunzip(number, whole, stored.AsSpan(0, samples * size)) != samples * size)
            {
                throw Damaged(number, "it holds fewer samples than the tile");
            }
        }
        else if (Bytes(plain, number) is { Length: > 0 } raw)
        {
            Copy(number, raw, samples, ref stored);
        }
        else
        {
            throw Damaged(number, "it holds nothing");
        }
    }

    private static void Make(ref byte[] stored, long bytes)
    {
        if (stored.Length < bytes)
        {
            stored = new byte[bytes];
        }
    }

    private FitsColumn? Numbers(string column) =>
        table.Find(column) is { Kind: not FitsColumnKind.Text } found ? found : null;

    private byte[]? Bytes(FitsColumn? column, long number) =>
        column is null ? null : table.Cell(column, number).Stored;

    private void Unpack(long number, byte[] bytes, int samples, ref byte[] stored)
    {
        var size = layout.BytesPerSample;
        var isScaled = layout.IsReal && (scales is not null || layout.Scale is not null);
        if (layout.Packing == "NOCOMPRESS")
        {
            Copy(number, bytes, samples, ref stored);
            return;
        }

        if (layout.Packing != "RICE_1" && !isScaled)
        {
            CheckGrowth(number, bytes.Length, samples * (long)size / 1032);
            Make(ref stored, samples * (long)size);
            UnpackWhole(number, bytes, samples, stored.AsSpan(0, samples * size));
            return;
        }

        var numbers = Integers(number, bytes, samples);
        Make(ref stored, samples * (long)size);
        if (isScaled)
        {
            Scale(number, numbers, stored.AsSpan(0, samples * size));
        }
        else if (layout.IsReal)
        {
            throw Damaged(number, "real numbers were packed as whole ones without ZSCALE");
        }
        else
        {
            Store(numbers, size, stored);
        }
    }

    /// <summary>Whole numbers of a tile: Rice codes, or 4-byte numbers packed with gzip.</summary>
    private int[] Integers(long number, byte[] bytes, int samples)
    {
        if (layout.Packing == "RICE_1")
        {
            CheckGrowth(
                number,
                RiceDecoder.MostSamples(bytes.Length, layout.RiceBytes, layout.RiceBlock),
                samples
            );
            var unpacked = new int[samples];
            return RiceDecoder.TryDecode(bytes, layout.RiceBytes, layout.RiceBlock, unpacked)
                ? unpacked
                : throw Damaged(number, "its codes end early");
        }

        CheckGrowth(number, bytes.Length, samples * 4L / 1032);
        var stored = new byte[samples * 4L];
        if (Gunzip(number, bytes, stored) != stored.Length)
        {
            throw Damaged(number, "it holds fewer samples than the tile");
        }

        var numbers = new int[samples];
        for (var i = 0; i < numbers.Length; i++)
        {
            numbers[i] =
                layout.Packing == "GZIP_2"
                    ? (stored[i] << 24)
                        | (stored[samples + i] << 16)
                        | (stored[(2 * samples) + i] << 8)
                        | stored[(3 * samples) + i]
                    : BinaryPrimitives.ReadInt32BigEndian(stored.AsSpan(4 * i));
        }

        return numbers;
    }

    /// <summary>Samples packed with gzip as they are stored; in GZIP_2 all first bytes stand first.</summary>
    private void UnpackWhole(long number, byte[] bytes, int samples, Span<byte> stored)
    {
        var size = layout.BytesPerSample;
        if (Gunzip(number, bytes, stored) != stored.Length)
        {
            throw Damaged(number, "it holds fewer samples than the tile");
        }

        if (layout.Packing != "GZIP_2" || size == 1)
        {
            return;
        }

        var shuffled = stored.ToArray();
        for (var part = 0; part < size; part++)
        {
            var from = shuffled.AsSpan(part * samples, samples);
            for (var i = 0; i < samples; i++)
            {
                stored[(i * size) + part] = from[i];
            }
        }
    }

    private void Scale(long number, int[] numbers, Span<byte> stored)
    {
        var blank = blanks is null ? layout.Blank : (int?)One(blanks, number);
        var values = new double[numbers.Length];
        Dither.Restore(
            numbers,
            (
                scales is null ? layout.Scale ?? 1.0 : One(scales, number),
                zeros is null ? layout.Zero ?? 0.0 : One(zeros, number),
                blank
            ),
            layout.Dithering,
            number + layout.Seed - 1,
            values
        );
        for (var i = 0; i < values.Length; i++)
        {
            if (layout.BitsPerSample == -32)
            {
                BinaryPrimitives.WriteSingleBigEndian(stored[(4 * i)..], (float)values[i]);
            }
            else
            {
                BinaryPrimitives.WriteDoubleBigEndian(stored[(8 * i)..], values[i]);
            }
        }
    }

    private double One(FitsColumn column, long number) =>
        table.ReadNumbers(column, number) is [{ IsDefined: true } value, ..]
            ? value.Number
            : throw Damaged(number, $"{column.Name} holds no number");

    private void Copy(long number, byte[] bytes, int samples, ref byte[] stored)
    {
        if (bytes.Length != samples * (long)layout.BytesPerSample)
        {
            throw Damaged(number, "it holds another number of samples than the tile");
        }

        Make(ref stored, bytes.Length);
        bytes.CopyTo(stored, 0);
    }

    private static void Store(int[] numbers, int size, byte[] stored)
    {
        for (var i = 0; i < numbers.Length; i++)
        {
            switch (size)
            {
                case 1:
                    stored[i] = (byte)numbers[i];
                    break;
                case 2:
                    BinaryPrimitives.WriteInt16BigEndian(stored.AsSpan(2 * i), (short)numbers[i]);
                    break;
                case 4:
                    BinaryPrimitives.WriteInt32BigEndian(stored.AsSpan(4 * i), numbers[i]);
                    break;
                default:
                    BinaryPrimitives.WriteInt64BigEndian(stored.AsSpan(8 * i), numbers[i]);
                    break;
            }
        }
    }

    private int Gunzip(long number, byte[] bytes, Span<byte> stored)
    {
        try
        {
            using var stream = new GZipStream(new MemoryStream(bytes), CompressionMode.Decompress);
            return stream.ReadAtLeast(stored, stored.Length, throwOnEndOfStream: false);
        }
        catch (Exception problem) when (problem is InvalidDataException or IOException)
        {
            throw Damaged(number, "its gzip data are no such data", problem);
        }
    }

    /// <summary>Refuses a tile whose bytes cannot hold what it claims, before room is made for it.</summary>
    private void CheckGrowth(long number, long possible, long wanted)
    {
        if (possible < wanted)
        {
            throw Damaged(number, "its bytes are too few for its samples");
        }
    }

    private UnreadableFileException Damaged(long number, string found, Exception? problem = null) =>
        new(
            name,
            FormattableString.Invariant($"tile {number + 1}"),
            found,
            "the file is damaged; copy it again",
            problem
        );
}

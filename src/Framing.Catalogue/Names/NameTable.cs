using System.Buffers.Binary;
using System.Text;

namespace Framing.Catalogue;

/// <summary>
/// Reads the embedded table of objects, star names and search keys. The layout is described in
/// tests/reference/catalogue/pack_objects.py.
/// </summary>
internal sealed class NameTable
{
    private const int ObjectLength = 52;
    private const int StarLength = 20;

    private static readonly Lazy<NameTable> TheEmbedded = new(() => new NameTable());

    private readonly TableSection objects;
    private readonly TableSection stars;
    private readonly TableSection keys;
    private readonly TextPool texts;

    private NameTable()
    {
        var table = EmbeddedTable.Open("objects.bin", "FRNAMES1"u8);
        objects = table.Section(0);
        stars = table.Section(1);
        keys = table.Section(2);
        texts = new(table.Section(3));
        ObjectCount = objects.Length / ObjectLength;
        StarCount = stars.Length / StarLength;
        KeyCount = keys.Length / 8;
    }

    public static NameTable Embedded => TheEmbedded.Value;

    public int ObjectCount { get; }

    public int StarCount { get; }

    public int KeyCount { get; }

    public ObjectRow Object(int row) => new(objects.Row(row, ObjectLength), texts);

    public ReadOnlySpan<byte> Key(int row) => texts.Utf8(keys.UInt32(2 * row));

    /// <summary>What a key stands for: a row of the objects, or a star.</summary>
    public NameTarget Target(int row) => new(keys.UInt32((2 * row) + 1));

    /// <summary>The first row of the keys that is not below a key, and the number of rows that equal it.</summary>
    public (int Row, int Count) Rows(string key)
    {
        var wanted = Encoding.UTF8.GetBytes(key);
        int low = 0,
            high = KeyCount;
        while (low < high)
        {
            var middle = (low + high) >>> 1;
            if (Key(middle).SequenceCompareTo(wanted) < 0)
            {
                low = middle + 1;
            }
            else
            {
                high = middle;
            }
        }

        var count = 0;
        while (low + count < KeyCount && Key(low + count).SequenceEqual(wanted))
        {
            count++;
        }

        return (low, count);
    }

    /// <summary>The row of a Hipparcos number among the named stars, -1 if there is none.</summary>
    public int StarRow(int hipparcos)
    {
        int low = 0,
            high = StarCount - 1;
        while (low <= high)
        {
            var middle = (low + high) >>> 1;
            var number = Hipparcos(middle);
            if (number == hipparcos)
            {
                return middle;
            }

            if (number < hipparcos)
            {
                low = middle + 1;
            }
            else
            {
                high = middle - 1;
            }
        }

        return -1;
    }

    public int Hipparcos(int row) => stars.Int32(row * (StarLength / 4));

    public StarName StarName(int row)
    {
        var bytes = stars.Row(row, StarLength);
        var flamsteed = BinaryPrimitives.ReadUInt16LittleEndian(bytes[16..]);
        return new(
            Hipparcos(row),
            Text(bytes, 4),
            Text(bytes, 8),
            Text(bytes, 12),
            flamsteed == 0 ? null : flamsteed,
            ConstellationNames.Abbreviation(bytes[18])
        );
    }

    private string? Text(ReadOnlySpan<byte> row, int at) =>
        texts.TextOrNull(BinaryPrimitives.ReadUInt32LittleEndian(row[at..]));
}

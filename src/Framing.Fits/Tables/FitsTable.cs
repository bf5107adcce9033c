using System.Buffers.Binary;
using System.Text;

namespace Framing.Fits;

/// <summary>A table of a FITS file: its columns, and its cells on demand.</summary>
/// <remarks>
/// <para>Binary tables with all kinds of columns, variable arrays among them, and tables of text. Nothing is held in memory.</para>
/// <para>Rows count from 0. Source: FITS Standard 4.0, sections 7.2 and 7.3.</para>
/// </remarks>
public sealed class FitsTable
{
    private const int ChunkBytes = 1 << 18;

    /// <summary>More rows than this are not read as a whole column: 8 bytes each.</summary>
    private const int MostRows = 100_000_000;

    private readonly ByteSource source;
    private readonly long start;
    private readonly long end;
    private readonly long heap;
    private readonly int rowBytes;

    internal FitsTable(ByteSource source, FitsUnit unit)
    {
        this.source = source;
        Header = unit.Header;
        var isText = unit.Kind == FitsUnitKind.TextTable;
        var axes = UnitReader.Axes(source.Name, Header);
        if (axes.Length != 2 || axes[0] > int.MaxValue)
        {
            throw UnitReader.Wrong(source.Name, "NAXIS", Header, "a table has 2 axes");
        }

        rowBytes = (int)axes[0];
        RowCount = rowBytes == 0 ? 0 : axes[1];
        start = unit.DataStart;
        end = unit.DataStart + unit.DataLength;
        if (end > source.Length)
        {
            throw new UnreadableFileException(
                source.Name,
                "table data",
                FormattableString.Invariant(
                    $"the file is truncated: {Math.Max(0, source.Length - start)} of {unit.DataLength} bytes are there"
                ),
                "copy it again"
            );
        }

        heap = start + Math.Max(0, Header.Integer("THEAP") ?? (rowBytes * RowCount));
        Columns = ColumnReader.Read(source.Name, Header, rowBytes, isText);
    }

    /// <summary>The table's cards.</summary>
    public FitsHeader Header { get; }

    /// <summary>The table's name (EXTNAME); empty when it has none.</summary>
    public string Name => Header.Text("EXTNAME")?.Trim() ?? string.Empty;

    /// <summary>Rows, 0 or more.</summary>
    public long RowCount { get; }

    /// <summary>The columns in their order.</summary>
    public IReadOnlyList<FitsColumn> Columns { get; }

    /// <summary>The column of a name.</summary>
    /// <param name="name">The name; capitals and small letters are the same.</param>
    /// <returns>The first such column, or null.</returns>
    public FitsColumn? Find(string name) =>
        Columns.FirstOrDefault(column =>
            string.Equals(column.Name, name, StringComparison.OrdinalIgnoreCase)
        );

    /// <summary>Reads the numbers of a cell.</summary>
    /// <param name="column">A column of this table, of any kind but text.</param>
    /// <param name="row">The row, from 0.</param>
    /// <returns>
    /// The values, TSCAL, TZERO and TNULL counted in. Logicals and bits are 1 and 0; a complex element is its real and its
    /// imaginary part.
    /// </returns>
    /// <exception cref="ArgumentException">The column holds text.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There is no such row.</exception>
    /// <exception cref="UnreadableFileException">The cell cannot be read.</exception>
    public SampleValue[] ReadNumbers(FitsColumn column, long row)
    {
        CheckNumbers(column);
        if (column.Decimals is not null)
        {
            return [TextCell.Number(column, ReadText(column, row), source.Name, row)];
        }

        var (stored, count) = Cell(column, row);
        return Numbers(column, stored, count);
    }

    /// <summary>Reads the text of a cell.</summary>
    /// <param name="column">A text column; of a text table any column, as it is written.</param>
    /// <param name="row">The row, from 0.</param>
    /// <returns>The text up to a NUL, without spaces at its end.</returns>
    /// <exception cref="ArgumentException">The column holds numbers.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There is no such row.</exception>
    /// <exception cref="UnreadableFileException">The cell cannot be read.</exception>
    public string ReadText(FitsColumn column, long row)
    {
        ArgumentNullException.ThrowIfNull(column);
        if (column.Kind != FitsColumnKind.Text && column.Decimals is null)
        {
            throw new ArgumentException($"The column {column.Name} holds numbers.", nameof(column));
        }

        return TextCell.Text(Cell(column, row).Stored);
    }

    /// <summary>Reads the first number of every cell of a column.</summary>
    /// <param name="column">A column of this table, of any kind but text.</param>
    /// <returns>A number a row; NaN where it is not defined or the cell is empty.</returns>
    /// <exception cref="ArgumentException">The column holds text.</exception>
    /// <exception cref="UnreadableFileException">A cell cannot be read, or there are more than 100 million rows.</exception>
    public double[] ReadColumn(FitsColumn column)
    {
        CheckNumbers(column);
        if (RowCount > MostRows)
        {
            throw new UnreadableFileException(
                source.Name,
                "NAXIS2",
                FormattableString.Invariant($"= {RowCount}"),
                "a column of at most 100000000 rows is read"
            );
        }

        var values = new double[RowCount];
        var rows = Math.Max(1, ChunkBytes / rowBytes);
        var buffer = column.IsVariable ? [] : new byte[(int)Math.Min(rows, RowCount) * rowBytes];
        for (var row = 0; row < values.Length; row++)
        {
            if (column.IsVariable)
            {
                values[row] = ReadNumbers(column, row) is [var first, ..]
                    ? first.Number
                    : double.NaN;
                continue;
            }

            var within = row % rows;
            if (within == 0)
            {
                var part = buffer.AsSpan(0, Math.Min(rows, values.Length - row) * rowBytes);
                source.ReadExactly(start + ((long)row * rowBytes), part);
            }

            var stored = buffer.AsSpan((within * rowBytes) + column.Offset, column.Bytes);
            values[row] =
                column.Decimals is not null
                    ? TextCell.Number(column, TextCell.Text(stored), source.Name, row).Number
                : column.Count == 0 ? double.NaN
                : First(column, stored);
        }

        return values;
    }

    /// <summary>The bytes of a cell, of a variable array those on the heap, and how many elements they are.</summary>
    internal (byte[] Stored, long Count) Cell(FitsColumn column, long row)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(row);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(row, RowCount);
        var cell = new byte[column.Bytes];
        source.ReadExactly(start + (row * rowBytes) + column.Offset, cell);
        if (!column.IsVariable || cell.Length == 0)
        {
            return (cell, column.Count);
        }

        var (count, place) = column.IsWide
            ? (
                BinaryPrimitives.ReadInt64BigEndian(cell),
                BinaryPrimitives.ReadInt64BigEndian(cell.AsSpan(8))
            )
            : (
                BinaryPrimitives.ReadInt32BigEndian(cell),
                BinaryPrimitives.ReadInt32BigEndian(cell.AsSpan(4))
            );
        if (count == 0)
        {
            return ([], 0);
        }

        if (
            count < 0
            || place < 0
            || count > int.MaxValue / 16
            || place > end - heap - column.BytesOf(count)
        )
        {
            throw new UnreadableFileException(
                source.Name,
                FormattableString.Invariant($"column {column.Number}, row {row + 1}"),
                FormattableString.Invariant($"{count} elements at {place}"),
                "an array lies within the table's data; the file is damaged"
            );
        }

        var stored = new byte[column.BytesOf(count)];
        source.ReadExactly(heap + place, stored);
        return (stored, count);
    }

    private static void CheckNumbers(FitsColumn column)
    {
        ArgumentNullException.ThrowIfNull(column);
        if (column.Kind == FitsColumnKind.Text)
        {
            throw new ArgumentException($"The column {column.Name} holds text.", nameof(column));
        }
    }

    private static double First(FitsColumn column, ReadOnlySpan<byte> stored) =>
        column.Kind switch
        {
            FitsColumnKind.Logical => Logical(stored[0]).Number,
            FitsColumnKind.Bit => stored[0] >> 7,
            _ => SampleDecoder
                .DecodeOne(stored[..column.Scaling.BytesPerSample], column.Scaling)
                .Number,
        };

    private static SampleValue[] Numbers(FitsColumn column, byte[] stored, long count)
    {
        switch (column.Kind)
        {
            case FitsColumnKind.Logical:
                return Array.ConvertAll(stored, Logical);
            case FitsColumnKind.Bit:
                var bits = new SampleValue[count];
                for (var i = 0; i < bits.Length; i++)
                {
                    var bit = (stored[i / 8] >> (7 - (i % 8))) & 1;
                    bits[i] = new(bit, bit);
                }

                return bits;
            default:
                var scaling = column.Scaling;
                var size = scaling.BytesPerSample;
                var values = new SampleValue[stored.Length / size];
                for (var i = 0; i < values.Length; i++)
                {
                    values[i] = SampleDecoder.DecodeOne(stored.AsSpan(i * size, size), scaling);
                }

                return values;
        }
    }

    private static SampleValue Logical(byte stored) =>
        stored switch
        {
            (byte)'T' => new(1, 1),
            (byte)'F' => new(0, 0),
            _ => SampleValue.Undefined,
        };
}

namespace Framing.Fits;

/// <summary>A compressed image as if it were plain: the bytes that its data would be, unpacked as they are asked for.</summary>
/// <remarks>One row of tiles from edge to edge is held, so that reading row after row unpacks every tile once.</remarks>
internal sealed class TiledBytes : ByteSource
{
    private readonly ByteSource file;
    private readonly TileReader reader;
    private readonly TileLayout layout;
    private readonly Lock gate = new();
    private readonly byte[][] held;
    private readonly long[] heldNumber;

    public TiledBytes(ByteSource file, FitsTable table, TileLayout layout)
        : base(file.Name)
    {
        this.file = file;
        this.layout = layout;
        Int128 tiles = 1;
        Int128 samples = 1;
        for (var axis = 0; axis < layout.Axes.Length; axis++)
        {
            tiles *= Math.Max(1, layout.TilesAlong(axis));
            samples *= layout.Along(axis);
            if (tiles > long.MaxValue || samples > long.MaxValue / 16)
            {
                throw TooLarge(table);
            }
        }

        if (tiles > table.RowCount)
        {
            throw TooLarge(table);
        }

        Length = (long)samples * layout.BytesPerSample;
        reader = new(file.Name, table, layout);
        // As many tiles as the table has rows at most, so this is no claim alone.
        held = new byte[layout.TilesAlong(0)][];
        Array.Fill(held, []);
        heldNumber = new long[held.Length];
        Array.Fill(heldNumber, -1);
    }

    public override long Length { get; }

    public override void ReadExactly(long offset, Span<byte> buffer)
    {
        if (offset < 0 || offset + buffer.Length > Length)
        {
            throw Shrunk(offset);
        }

        lock (gate)
        {
            while (buffer.Length > 0)
            {
                var copied = Copy(offset, buffer);
                buffer = buffer[copied..];
                offset += copied;
            }
        }
    }

    public override void Dispose() => file.Dispose();

    /// <summary>Copies what lies in one row of one tile.</summary>
    private int Copy(long offset, Span<byte> buffer)
    {
        var size = layout.BytesPerSample;
        var (sample, within) = Math.DivRem(offset, size);
        var (row, x) = Math.DivRem(sample, layout.Along(0));
        var (plane, y) = Math.DivRem(row, layout.Along(1));
        var (cube, z) = Math.DivRem(plane, layout.Along(2));
        var (column, inX) = Math.DivRem(x, layout.TileAlong(0));
        var (line, inY) = Math.DivRem(y, layout.TileAlong(1));
        var (layer, inZ) = Math.DivRem(z, layout.TileAlong(2));
        // A tile at an edge ends there.
        var width = Math.Min(layout.TileAlong(0), layout.Along(0) - (x - inX));
        var height = Math.Min(layout.TileAlong(1), layout.Along(1) - (y - inY));
        var depth = Math.Min(layout.TileAlong(2), layout.Along(2) - (z - inZ));
        var number =
            column
            + (
                layout.TilesAlong(0)
                * (line + (layout.TilesAlong(1) * (layer + (layout.TilesAlong(2) * cube))))
            );
        if (heldNumber[column] != number)
        {
            heldNumber[column] = -1;
            reader.Read(number, checked((int)(width * height * depth)), ref held[column]);
            heldNumber[column] = number;
        }

        var place = (((((inZ * height) + inY) * width) + inX) * size) + within;
        var length = (int)Math.Min(buffer.Length, ((width - inX) * size) - within);
        held[column].AsSpan((int)place, length).CopyTo(buffer);
        return length;
    }

    private UnreadableFileException TooLarge(FitsTable table) =>
        new(
            Name,
            "ZNAXISn",
            $"= {string.Join(" x ", layout.Axes)}",
            FormattableString.Invariant($"the table holds {table.RowCount} tiles")
        );
}

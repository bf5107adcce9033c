using System.Buffers.Binary;

namespace Framing.Catalogue;

/// <summary>One section of an embedded table. Every read is checked against its length.</summary>
internal readonly unsafe struct TableSection(byte* start, int length)
{
    private readonly byte* start = start;

    public int Length { get; } = length;

    public ReadOnlySpan<byte> Bytes => new(start, Length);

    public uint UInt32(int row) => BinaryPrimitives.ReadUInt32LittleEndian(Bytes.Slice(4 * row, 4));

    public int Int32(int row) => BinaryPrimitives.ReadInt32LittleEndian(Bytes.Slice(4 * row, 4));

    public ulong UInt64(int row) =>
        BinaryPrimitives.ReadUInt64LittleEndian(Bytes.Slice(8 * row, 8));

    public short Int16(int row) => BinaryPrimitives.ReadInt16LittleEndian(Bytes.Slice(2 * row, 2));

    public ReadOnlySpan<byte> Row(int row, int rowLength) =>
        Bytes.Slice(row * rowLength, rowLength);
}

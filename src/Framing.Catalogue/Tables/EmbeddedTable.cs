using System.Buffers.Binary;

namespace Framing.Catalogue;

/// <summary>A table that lies in memory as part of the assembly, cut into sections. Nothing is copied or read ahead.</summary>
/// <remarks>The layout is described in tests/reference/catalogue/tables.py, which writes it.</remarks>
internal sealed unsafe class EmbeddedTable
{
    private const int HeadLength = 12;

    private readonly UnmanagedMemoryStream resource;
    private readonly byte* start;

    private EmbeddedTable(UnmanagedMemoryStream resource)
    {
        this.resource = resource;
        start = resource.PositionPointer;
    }

    private ReadOnlySpan<byte> Bytes => new(start, checked((int)resource.Length));

    /// <summary>Opens an embedded table.</summary>
    /// <param name="name">The name of the resource.</param>
    /// <param name="mark">The eight letters it begins with.</param>
    /// <returns>The table.</returns>
    /// <exception cref="InvalidDataException">The resource is missing or is another table: the program was built wrongly.</exception>
    public static EmbeddedTable Open(string name, ReadOnlySpan<byte> mark)
    {
        // The runtime hands out embedded resources as a view of the mapped assembly.
        if (
            typeof(EmbeddedTable).Assembly.GetManifestResourceStream(name)
            is not UnmanagedMemoryStream resource
        )
        {
            throw new InvalidDataException($"The embedded table {name} is missing.");
        }

        var table = new EmbeddedTable(resource);
        return table.Bytes.StartsWith(mark)
            ? table
            : throw new InvalidDataException(
                $"The embedded table {name} does not begin with its mark."
            );
    }

    public TableSection Section(int number)
    {
        var entry = Bytes.Slice(HeadLength + (8 * number), 8);
        var offset = checked((int)BinaryPrimitives.ReadUInt32LittleEndian(entry));
        var length = checked((int)BinaryPrimitives.ReadUInt32LittleEndian(entry[4..]));
        _ = Bytes.Slice(offset, length);
        return new(start + offset, length);
    }
}

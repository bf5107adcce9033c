using System.Buffers.Binary;
using System.Text;

namespace Framing.Catalogue;

/// <summary>The texts of an embedded table: two bytes of length, then UTF-8. Offset 0 is the empty text.</summary>
internal readonly struct TextPool(TableSection section)
{
    private readonly TableSection section = section;

    public ReadOnlySpan<byte> Utf8(uint offset)
    {
        var from = section.Bytes[checked((int)offset)..];
        return from.Slice(2, BinaryPrimitives.ReadUInt16LittleEndian(from));
    }

    public string Text(uint offset) => Encoding.UTF8.GetString(Utf8(offset));

    public string? TextOrNull(uint offset) => offset == 0 ? null : Text(offset);

    public IReadOnlyList<string> List(uint offset) => offset == 0 ? [] : Text(offset).Split('|');
}

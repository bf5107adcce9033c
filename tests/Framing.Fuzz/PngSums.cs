using System.Buffers.Binary;

namespace Framing.Fuzz;

/// <summary>Makes the checksums of a changed PNG right again, so that the change comes further than to the checksum.</summary>
internal static class PngSums
{
    private const int SignatureBytes = 8;

    /// <summary>Mends every chunk that the bytes hold whole.</summary>
    /// <param name="png">The bytes, changed in place.</param>
    /// <remarks>Source: PNG specification (third edition), section 5.3 and annex D: CRC-32 over type and data.</remarks>
    public static void Mend(Span<byte> png)
    {
        var at = SignatureBytes;
        while (at + 12 <= png.Length)
        {
            var length = BinaryPrimitives.ReadUInt32BigEndian(png[at..]);
            if (length > png.Length - at - 12)
            {
                return;
            }

            var end = at + 8 + (int)length;
            BinaryPrimitives.WriteUInt32BigEndian(png[end..], Crc(png[(at + 4)..end]));
            at = end + 4;
        }
    }

    private static uint Crc(ReadOnlySpan<byte> bytes)
    {
        var crc = 0xFFFF_FFFF;
        foreach (var value in bytes)
        {
            crc ^= value;
            for (var bit = 0; bit < 8; bit++)
            {
                crc = (crc >> 1) ^ ((crc & 1) * 0xEDB8_8320);
            }
        }

        return ~crc;
    }
}

using System.Buffers.Binary;
using System.IO.Compression;
using System.Text;

namespace Framing.Imaging.Tests;

/// <summary>Makes PNG files by hand, right ones and lying ones.</summary>
internal static class PngMaker
{
    public static byte[] Grey(int width, int height, byte[] data) =>
        [
            .. PngLayout.Signature,
            .. Header(width, height, 8, 0),
            .. Chunk("IDAT", data),
            .. Chunk("IEND", []),
        ];

    public static byte[] Header(int width, int height, byte depth, byte colour)
    {
        var header = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(header, width);
        BinaryPrimitives.WriteInt32BigEndian(header.AsSpan(4), height);
        header[8] = depth;
        header[9] = colour;
        return Chunk("IHDR", header);
    }

    /// <summary>The rows of a picture of zeros as zlib data.</summary>
    public static byte[] Zeros(long bytes)
    {
        using var memory = new MemoryStream();
        using (var zlib = new ZLibStream(memory, CompressionLevel.Optimal))
        {
            var buffer = new byte[1 << 20];
            for (var left = bytes; left > 0; left -= buffer.Length)
            {
                zlib.Write(buffer, 0, (int)Math.Min(left, buffer.Length));
            }
        }

        return memory.ToArray();
    }

    private static byte[] Chunk(string type, byte[] data)
    {
        var chunk = new byte[12 + data.Length];
        BinaryPrimitives.WriteInt32BigEndian(chunk, data.Length);
        Encoding.ASCII.GetBytes(type, chunk.AsSpan(4));
        data.CopyTo(chunk, 8);
        BinaryPrimitives.WriteUInt32BigEndian(
            chunk.AsSpan(8 + data.Length),
            Crc(chunk.AsSpan(4, 4 + data.Length))
        );
        return chunk;
    }

    private static uint Crc(ReadOnlySpan<byte> bytes)
    {
        var crc = uint.MaxValue;
        foreach (var value in bytes)
        {
            crc ^= value;
            for (var bit = 0; bit < 8; bit++)
            {
                crc = (crc & 1) == 0 ? crc >> 1 : (crc >> 1) ^ 0xEDB88320u;
            }
        }

        return ~crc;
    }
}

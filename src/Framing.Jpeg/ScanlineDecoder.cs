using System.Runtime.InteropServices;
using SkiaSharp;

namespace Framing.Jpeg;

/// <summary>Decodes a JPEG to rows of bytes, from the stored top.</summary>
internal static class ScanlineDecoder
{
    /// <summary>Takes a row: one byte a plane and pixel, colours side by side.</summary>
    /// <param name="samples">The samples.</param>
    public delegate void RowTaker(ReadOnlySpan<byte> samples);

    /// <summary>Decodes rows until so many are given or the data end.</summary>
    /// <param name="jpeg">The file.</param>
    /// <param name="width">Columns that the caller read in the header.</param>
    /// <param name="height">Rows that the caller read in the header.</param>
    /// <param name="planes">1 for grey, 3 for colours.</param>
    /// <param name="rows">Rows wanted.</param>
    /// <param name="take">Takes each row.</param>
    /// <returns>The rows that were given; fewer than wanted where the file is damaged or another than the caller thinks.</returns>
    public static int Decode(
        ReadOnlySpan<byte> jpeg,
        int width,
        int height,
        int planes,
        int rows,
        RowTaker take
    )
    {
        using var data = SKData.CreateCopy(jpeg);
        using var codec = data is null ? null : SKCodec.Create(data);
        if (codec is null || codec.Info.Width != width || codec.Info.Height != height)
        {
            return 0;
        }

        // No colour space: the numbers of the file, not those of a screen.
        var info = new SKImageInfo(
            width,
            height,
            planes == 1 ? SKColorType.Gray8 : SKColorType.Rgba8888,
            SKAlphaType.Opaque
        );
        if (codec.StartScanlineDecode(info) != SKCodecResult.Success)
        {
            return 0;
        }

        var bytes = new byte[info.RowBytes];
        var samples = new byte[width * planes];
        var handle = GCHandle.Alloc(bytes, GCHandleType.Pinned);
        try
        {
            for (var row = 0; row < rows; row++)
            {
                if (codec.GetScanlines(handle.AddrOfPinnedObject(), 1, bytes.Length) != 1)
                {
                    return row;
                }

                if (planes == 1)
                {
                    take(bytes);
                    continue;
                }

                for (int pixel = 0, at = 0; at < samples.Length; pixel += 4, at += 3)
                {
                    samples[at] = bytes[pixel];
                    samples[at + 1] = bytes[pixel + 1];
                    samples[at + 2] = bytes[pixel + 2];
                }

                take(samples);
            }
        }
        finally
        {
            handle.Free();
        }

        return rows;
    }
}

using System.Runtime.InteropServices;
using SixLabors.ImageSharp.PixelFormats;

namespace Framing.Imaging;

/// <summary>Takes the library's pixels apart into samples.</summary>
internal static class PngPixels
{
    /// <summary>Writes the samples of a row one after another: grey or red, green, blue, and alpha last where there is one.</summary>
    public static void Spread<TPixel>(Span<TPixel> row, Span<ushort> samples)
        where TPixel : unmanaged, IPixel<TPixel>
    {
        if (
            typeof(TPixel) == typeof(L16)
            || typeof(TPixel) == typeof(La32)
            || typeof(TPixel) == typeof(Rgb48)
            || typeof(TPixel) == typeof(Rgba64)
        )
        {
            // These are nothing but 16-bit numbers in the order wanted.
            MemoryMarshal.Cast<TPixel, ushort>(row).CopyTo(samples);
            return;
        }

        var bytes = MemoryMarshal.AsBytes(row);
        for (var i = 0; i < bytes.Length; i++)
        {
            samples[i] = bytes[i];
        }
    }
}

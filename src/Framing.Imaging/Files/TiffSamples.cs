using System.Runtime.InteropServices;
using Framing.Fits;

namespace Framing.Imaging;

/// <summary>Takes rows of TIFF samples apart.</summary>
/// <remarks>
/// Where white is zero, whole numbers of 0 or more are turned round (65535 − n), so that more is brighter. Fewer than 8 bits
/// are spread over 0 to 255. A palette's colours are 16-bit numbers.
/// </remarks>
internal static class TiffSamples
{
    public static SampleFormat FormatOf(TiffLayout layout) =>
        layout.Photometric == 3
            ? SampleFormat.UInt16
            : (layout.Kind, layout.Bits) switch
            {
                (1, 16) => SampleFormat.UInt16,
                (1, 32) => SampleFormat.UInt32,
                (2, 8) => SampleFormat.Int8,
                (2, 16) => SampleFormat.Int16,
                (2, 32) => SampleFormat.Int32,
                (3, 64) => SampleFormat.Float64,
                (3, _) => SampleFormat.Float32,
                _ => SampleFormat.UInt8,
            };

    /// <summary>A shown plane's numbers of a row.</summary>
    /// <param name="layout">What the file says of itself.</param>
    /// <param name="bytes">The row.</param>
    /// <param name="first">Which sample of the row's first pixel; the only one where planes are stored by themselves.</param>
    /// <param name="plane">The shown plane, for the palette.</param>
    /// <param name="values">Takes them.</param>
    public static void Spread(
        TiffLayout layout,
        ReadOnlySpan<byte> bytes,
        int first,
        int plane,
        Span<float> values
    )
    {
        var step = layout.Planar ? 1 : layout.Samples;
        for (var (column, at) = (0, first); column < values.Length; column++, at += step)
        {
            values[column] = (float)Number(layout, bytes, at, plane);
        }
    }

    /// <summary>One sample, exactly.</summary>
    public static SampleValue Sample(TiffLayout layout, ReadOnlySpan<byte> bytes, int at, int plane)
    {
        var number = Number(layout, bytes, at, plane);
        return new(number, layout.Kind == 3 ? null : (Int128)number);
    }

    private static double Number(TiffLayout layout, ReadOnlySpan<byte> bytes, int at, int plane)
    {
        if (layout.Kind != 1)
        {
            return (layout.Kind, layout.Bits) switch
            {
                (2, 8) => (sbyte)bytes[at],
                (2, 16) => Cast<short>(bytes)[at],
                (2, _) => Cast<int>(bytes)[at],
                (_, 16) => (double)Cast<Half>(bytes)[at],
                (_, 32) => Cast<float>(bytes)[at],
                _ => Cast<double>(bytes)[at],
            };
        }

        var most = (1L << layout.Bits) - 1;
        long number = layout.Bits switch
        {
            8 => bytes[at],
            16 => Cast<ushort>(bytes)[at],
            32 => Cast<uint>(bytes)[at],
            _ => (bytes[at * layout.Bits / 8] >> (8 - layout.Bits - (at * layout.Bits % 8))) & most,
        };
        if (layout.Photometric == 3 && plane < 3)
        {
            return layout.Palette[(plane * (most + 1)) + number];
        }

        number = layout.Photometric == 0 && plane < 1 ? most - number : number;
        return layout.Bits < 8 ? number * (255 / most) : number;
    }

    private static ReadOnlySpan<T> Cast<T>(ReadOnlySpan<byte> bytes)
        where T : unmanaged => MemoryMarshal.Cast<byte, T>(bytes);
}

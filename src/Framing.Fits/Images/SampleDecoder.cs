using System.Buffers.Binary;
using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Framing.Fits;

/// <summary>Turns stored big-endian samples into values.</summary>
/// <remarks>
/// The bytes are turned round in place, in a buffer that stays in the processor's cache, and then widened; the usual 16-bit
/// samples of cameras take one pass. Values that a float holds exactly are added up in float; all others in double and
/// rounded once.
/// </remarks>
internal static class SampleDecoder
{
    /// <summary>Decodes samples to float.</summary>
    /// <param name="stored">Stored bytes; turned round in place.</param>
    /// <param name="scaling">How they become values.</param>
    /// <param name="values">Takes one value a sample; NaN where it is not defined.</param>
    public static void Decode(Span<byte> stored, SampleScaling scaling, Span<float> values)
    {
        switch (scaling.BitsPerSample)
        {
            case 8:
                Decode8(stored, scaling, values);
                break;
            case 16:
                Decode16(stored, scaling, values);
                break;
            case 32:
                Decode32(Turned(MemoryMarshal.Cast<byte, int>(stored)), scaling, values);
                break;
            case 64:
                DecodeWide(Turned(MemoryMarshal.Cast<byte, long>(stored)), scaling, values);
                break;
            case -32:
                DecodeFloat(Turned(MemoryMarshal.Cast<byte, int>(stored)), scaling, values);
                break;
            default:
                DecodeDouble(Turned(MemoryMarshal.Cast<byte, long>(stored)), scaling, values);
                break;
        }
    }

    /// <summary>Decodes one sample exactly.</summary>
    public static SampleValue DecodeOne(ReadOnlySpan<byte> stored, SampleScaling scaling)
    {
        if (scaling.BitsPerSample < 0)
        {
            var number =
                scaling.BitsPerSample == -32
                    ? BinaryPrimitives.ReadSingleBigEndian(stored)
                    : BinaryPrimitives.ReadDoubleBigEndian(stored);
            return new(scaling.Changes ? scaling.Zero + (scaling.Scale * number) : number, null);
        }

        var whole = scaling.BitsPerSample switch
        {
            8 => stored[0],
            16 => BinaryPrimitives.ReadInt16BigEndian(stored),
            32 => BinaryPrimitives.ReadInt32BigEndian(stored),
            _ => BinaryPrimitives.ReadInt64BigEndian(stored),
        };
        if (whole == scaling.Blank)
        {
            return SampleValue.Undefined;
        }

        // Beyond 2^100 the offset says nothing a 128-bit sum could keep; the double tells it as well.
        if (scaling.IsWhole && Math.Abs(scaling.Zero) < 1e30)
        {
            var exact = whole + (Int128)scaling.Zero;
            return new((double)exact, exact);
        }

        return new(scaling.Zero + (scaling.Scale * whole), null);
    }

    private static Span<short> Turned(Span<short> samples)
    {
        if (BitConverter.IsLittleEndian)
        {
            BinaryPrimitives.ReverseEndianness(samples, samples);
        }

        return samples;
    }

    private static Span<int> Turned(Span<int> samples)
    {
        if (BitConverter.IsLittleEndian)
        {
            BinaryPrimitives.ReverseEndianness(samples, samples);
        }

        return samples;
    }

    private static Span<long> Turned(Span<long> samples)
    {
        if (BitConverter.IsLittleEndian)
        {
            BinaryPrimitives.ReverseEndianness(samples, samples);
        }

        return samples;
    }

    private static void Decode8(
        ReadOnlySpan<byte> samples,
        SampleScaling scaling,
        Span<float> values
    )
    {
        // 256 possible values: a table is exact and quick for every scaling.
        Span<float> table = stackalloc float[256];
        for (var i = 0; i < table.Length; i++)
        {
            table[i] = i == scaling.Blank ? float.NaN : (float)(scaling.Zero + (scaling.Scale * i));
        }

        for (var i = 0; i < samples.Length; i++)
        {
            values[i] = table[samples[i]];
        }
    }

    private static void Decode16(Span<byte> stored, SampleScaling scaling, Span<float> values)
    {
        // Whole offsets up to 2^23 leave every sum below 2^24, which a float holds exactly.
        if (scaling.IsWhole && Math.Abs(scaling.Zero) <= 8388608.0)
        {
            WholeDecoder.Decode(stored, (float)scaling.Zero, BlankOf<short>(scaling), values);
            return;
        }

        var samples = Turned(MemoryMarshal.Cast<byte, short>(stored));
        for (var i = 0; i < samples.Length; i++)
        {
            values[i] =
                samples[i] == scaling.Blank
                    ? float.NaN
                    : (float)(scaling.Zero + (scaling.Scale * samples[i]));
        }
    }

    private static void Decode32(
        ReadOnlySpan<int> samples,
        SampleScaling scaling,
        Span<float> values
    )
    {
        for (var i = 0; i < samples.Length; i++)
        {
            values[i] =
                samples[i] == scaling.Blank
                    ? float.NaN
                    : (float)(scaling.Zero + (scaling.Scale * samples[i]));
        }
    }

    private static void DecodeWide(
        ReadOnlySpan<long> samples,
        SampleScaling scaling,
        Span<float> values
    )
    {
        // Near an offset of 2^63 a double knows steps of 1024 only: whole values are summed as whole numbers.
        var whole = scaling.IsWhole && Math.Abs(scaling.Zero) < 1e30;
        var zero = whole ? (Int128)scaling.Zero : 0;
        for (var i = 0; i < samples.Length; i++)
        {
            values[i] =
                samples[i] == scaling.Blank ? float.NaN
                : whole ? (float)(zero + samples[i])
                : (float)(scaling.Zero + (scaling.Scale * samples[i]));
        }
    }

    private static void DecodeFloat(
        ReadOnlySpan<int> samples,
        SampleScaling scaling,
        Span<float> values
    )
    {
        if (!scaling.Changes)
        {
            MemoryMarshal.Cast<int, float>(samples).CopyTo(values);
            return;
        }

        var numbers = MemoryMarshal.Cast<int, float>(samples);
        for (var i = 0; i < numbers.Length; i++)
        {
            values[i] = (float)(scaling.Zero + (scaling.Scale * numbers[i]));
        }
    }

    private static void DecodeDouble(
        ReadOnlySpan<long> samples,
        SampleScaling scaling,
        Span<float> values
    )
    {
        var numbers = MemoryMarshal.Cast<long, double>(samples);
        for (var i = 0; i < numbers.Length; i++)
        {
            values[i] = scaling.Changes
                ? (float)(scaling.Zero + (scaling.Scale * numbers[i]))
                : (float)numbers[i];
        }
    }

    /// <summary>BLANK as a stored sample, or null when no stored sample can equal it.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T? BlankOf<T>(SampleScaling scaling)
        where T : struct, IBinaryInteger<T>, IMinMaxValue<T> =>
        scaling.Blank is { } blank
        && blank >= long.CreateSaturating(T.MinValue)
        && blank <= long.CreateSaturating(T.MaxValue)
            ? T.CreateTruncating(blank)
            : null;
}

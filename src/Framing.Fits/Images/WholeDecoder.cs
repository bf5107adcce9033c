using System.Buffers.Binary;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Framing.Fits;

/// <summary>
/// Turns stored 16-bit samples into values in one pass: bytes turned round, widened, a whole offset added, 16 samples at a time.
/// </summary>
internal static class WholeDecoder
{
    private const int Step = 16;
    private const int Half = Step / 2;

    /// <summary>Decodes samples.</summary>
    /// <param name="stored">Stored bytes, two a sample.</param>
    /// <param name="zero">What is added: a whole number of at most 2^23, so that a float holds every sum.</param>
    /// <param name="blank">The stored sample that means "not defined", or null.</param>
    /// <param name="values">Takes a value a sample; NaN where it is not defined.</param>
    // Compiled at full strength at once: in a short run the loop would else spend its time half-compiled.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Decode(
        ReadOnlySpan<byte> stored,
        float zero,
        short? blank,
        Span<float> values
    )
    {
        var count = stored.Length / sizeof(short);
        ref var from = ref MemoryMarshal.GetReference(stored);
        ref var to = ref MemoryMarshal.GetReference(values[..count]);
        var i = 0;
        if (Vector256.IsHardwareAccelerated && BitConverter.IsLittleEndian)
        {
            var offset = Vector256.Create(zero);
            if (blank is { } none)
            {
                var (nothing, hole) = (Vector256.Create(none), Vector256.Create(float.NaN));
                for (; i <= count - Step; i += Step)
                {
                    var samples = Turned(ref from, i);
                    var (low, high) = Vector256.Widen(Vector256.Equals(samples, nothing));
                    Vector256
                        .ConditionalSelect(low.AsSingle(), hole, Low(samples) + offset)
                        .StoreUnsafe(ref to, (nuint)i);
                    Vector256
                        .ConditionalSelect(high.AsSingle(), hole, High(samples) + offset)
                        .StoreUnsafe(ref to, (nuint)(i + Half));
                }
            }
            else
            {
                for (; i <= count - Step; i += Step)
                {
                    var samples = Turned(ref from, i);
                    (Low(samples) + offset).StoreUnsafe(ref to, (nuint)i);
                    (High(samples) + offset).StoreUnsafe(ref to, (nuint)(i + Half));
                }
            }
        }

        for (; i < count; i++)
        {
            var sample = BinaryPrimitives.ReadInt16BigEndian(stored[(i * sizeof(short))..]);
            values[i] = sample == blank ? float.NaN : sample + zero;
        }
    }

    /// <summary>16 samples, the bytes of each turned round.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<short> Turned(ref byte from, int sample) =>
        Vector256
            .Shuffle(
                Vector256.LoadUnsafe(ref from, (nuint)sample * sizeof(short)),
                Vector256.Create(
                    (byte)1,
                    0,
                    3,
                    2,
                    5,
                    4,
                    7,
                    6,
                    9,
                    8,
                    11,
                    10,
                    13,
                    12,
                    15,
                    14,
                    17,
                    16,
                    19,
                    18,
                    21,
                    20,
                    23,
                    22,
                    25,
                    24,
                    27,
                    26,
                    29,
                    28,
                    31,
                    30
                )
            )
            .AsInt16();

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<float> Low(Vector256<short> samples) =>
        Vector256.ConvertToSingle(Vector256.WidenLower(samples));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<float> High(Vector256<short> samples) =>
        Vector256.ConvertToSingle(Vector256.WidenUpper(samples));
}

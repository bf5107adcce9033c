using System.Buffers.Binary;

namespace Framing.Fits.Tests;

public sealed class WholeDecoderTests
{
    /// <summary>Every stored sample, and every length about a step, against the standard's formula a sample at a time.</summary>
    [Theory]
    [InlineData(0f, null)]
    [InlineData(32768f, null)]
    [InlineData(-8388608f, null)]
    [InlineData(32768f, (short)-32768)]
    [InlineData(0f, (short)32767)]
    [InlineData(1f, (short)0)]
    public void Decode_EverySample_IsWhatTheFormulaSays(float zero, short? blank)
    {
        var stored = new byte[2 * 65536];
        for (var i = 0; i < 65536; i++)
        {
            BinaryPrimitives.WriteUInt16BigEndian(stored.AsSpan(2 * i), (ushort)i);
        }

        foreach (var (from, count) in Pieces())
        {
            var values = new float[count + 2];
            values[0] = values[^1] = -7.5f;

            WholeDecoder.Decode(
                stored.AsSpan(2 * from, 2 * count),
                zero,
                blank,
                values.AsSpan(1, count)
            );

            for (var i = 0; i < count; i++)
            {
                var sample = (short)(ushort)(from + i);
                Assert.Equal(sample == blank ? float.NaN : sample + (double)zero, values[i + 1]);
            }

            Assert.Equal((-7.5f, -7.5f), (values[0], values[^1]));
        }
    }

    private static IEnumerable<(int From, int Count)> Pieces()
    {
        yield return (0, 65536);
        for (var count = 0; count <= 49; count++)
        {
            yield return (32760, count);
        }
    }
}

using System.Runtime.CompilerServices;

namespace Framing.Mosaics;

/// <summary>Normal random values from a seed, the same on every machine.</summary>
/// <remarks>
/// SplitMix64 (Steele, Lea and Flood 2014, OOPSLA, 453) and Marsaglia's polar method (Marsaglia and Bray 1964, SIAM Review
/// 6, 260). The logarithm is summed here from sums and products alone, because a machine's own may differ in its last digit.
/// </remarks>
internal struct SeededDraws
{
    private ulong state;
    private double spare;
    private bool hasSpare;

    /// <summary>Starts one of many independent sequences of a seed.</summary>
    public SeededDraws(ulong seed, ulong sequence) =>
        state = Mixed(Mixed(seed + 0x9E3779B97F4A7C15UL) ^ (sequence * 0xD1342543DE82EF95UL));

    /// <summary>A value between 0 and 1, 53 bits.</summary>
    public double Uniform()
    {
        state += 0x9E3779B97F4A7C15UL;
        return (Mixed(state) >> 11) * (1.0 / (1UL << 53));
    }

    /// <summary>A standard normal value.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public double Normal()
    {
        if (hasSpare)
        {
            hasSpare = false;
            return spare;
        }

        double u,
            v,
            s;
        do
        {
            u = (2.0 * Uniform()) - 1.0;
            v = (2.0 * Uniform()) - 1.0;
            s = (u * u) + (v * v);
        } while (s is >= 1.0 or 0.0);

        var factor = Math.Sqrt(-2.0 * Logarithm(s) / s);
        spare = v * factor;
        hasSpare = true;
        return u * factor;
    }

    /// <summary>The natural logarithm of a normal number above 0: 2 artanh((m - 1)/(m + 1)) of its mantissa, and its exponent.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static double Logarithm(double x)
    {
        var bits = BitConverter.DoubleToInt64Bits(x);
        var exponent = (int)(bits >> 52) - 1023;
        var mantissa = BitConverter.Int64BitsToDouble(
            (bits & 0xFFFFFFFFFFFFFL) | 0x3FF0000000000000L
        );
        if (mantissa > 1.4142135623730951)
        {
            mantissa *= 0.5;
            exponent++;
        }

        var t = (mantissa - 1.0) / (mantissa + 1.0);
        var square = t * t;

        // |t| is at most 0.1716: the first term left out is below 1e-17 of the first.
        var sum = 0.0;
        for (var k = 21; k >= 1; k -= 2)
        {
            sum = (sum * square) + (1.0 / k);
        }

        return (exponent * 0.6931471805599453) + (2.0 * t * sum);
    }

    private static ulong Mixed(ulong z)
    {
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return z ^ (z >> 31);
    }
}

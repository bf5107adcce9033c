using System.Numerics;

namespace Framing.Rehearsal;

/// <summary>Random numbers that a seed and the number of a stream decide: each row of a frame has a stream of its own.</summary>
/// <remarks>
/// xoshiro256**, started by SplitMix64 (D. Blackman and S. Vigna 2021, ACM Trans. Math. Softw. 47, 36; both in the public
/// domain).
/// </remarks>
internal struct RandomStream
{
    private ulong s0,
        s1,
        s2,
        s3;
    private double spare;
    private bool hasSpare;

    public RandomStream(ulong seed, ulong stream)
    {
        var state = Scramble(seed + 0x9E3779B97F4A7C15UL) ^ Scramble(stream * 0xD1342543DE82EF95UL);
        s0 = Scramble(state += 0x9E3779B97F4A7C15UL);
        s1 = Scramble(state += 0x9E3779B97F4A7C15UL);
        s2 = Scramble(state += 0x9E3779B97F4A7C15UL);
        s3 = Scramble(state + 0x9E3779B97F4A7C15UL);
        (spare, hasSpare) = (0.0, false);
    }

    /// <summary>A number from 0 (included) to 1 (left out).</summary>
    public double Share() => (Bits() >> 11) * (1.0 / (1UL << 53));

    public double Between(double from, double to) => from + ((to - from) * Share());

    /// <summary>A normal number of mean 0 and standard deviation 1 (G. Marsaglia's polar method).</summary>
    public double Normal()
    {
        if (hasSpare)
        {
            hasSpare = false;
            return spare;
        }

        double u,
            v,
            square;
        do
        {
            u = (2.0 * Share()) - 1.0;
            v = (2.0 * Share()) - 1.0;
            square = (u * u) + (v * v);
        } while (square is >= 1.0 or 0.0);

        var factor = Math.Sqrt(-2.0 * Math.Log(square) / square);
        (spare, hasSpare) = (v * factor, true);
        return u * factor;
    }

    /// <summary>Counted events, as many as a mean leads to expect and not more than there is room for, with a reader's noise.</summary>
    public double Counted(double mean, double noise, double most)
    {
        if (mean <= 40.0)
        {
            return Math.Min(Count(mean), most) + (noise * Normal());
        }

        if (mean >= most)
        {
            return most + (noise * Normal());
        }

        // From there on a bell is as good, skewness carried by the next term (Cornish and Fisher); one bell serves both.
        var z = Normal();
        return Math.Min(
            mean + (Math.Sqrt(mean + (noise * noise)) * z) + (((z * z) - 1.0) / 6.0),
            most + noise
        );
    }

    /// <summary>How many of randomly coming events come, a mean number being expected: for small means.</summary>
    public double Count(double mean)
    {
        var limit = Math.Exp(-Math.Max(mean, 0.0));
        var count = 0;
        for (var product = Share(); product > limit; product *= Share())
        {
            count++;
        }

        return count;
    }

    /// <summary>Scrambles 64 bits so that neighbours have nothing in common.</summary>
    public static ulong Scramble(ulong value)
    {
        value = (value ^ (value >> 30)) * 0xBF58476D1CE4E5B9UL;
        value = (value ^ (value >> 27)) * 0x94D049BB133111EBUL;
        return value ^ (value >> 31);
    }

    private ulong Bits()
    {
        var result = BitOperations.RotateLeft(s1 * 5, 7) * 9;
        var t = s1 << 17;
        s2 ^= s0;
        s3 ^= s1;
        s1 ^= s2;
        s0 ^= s3;
        s2 ^= t;
        s3 = BitOperations.RotateLeft(s3, 45);
        return result;
    }
}

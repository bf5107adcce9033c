namespace Framing.Benchmarks;

/// <summary>Random numbers that any language can make again: the i-th draw of a seed, in no order.</summary>
/// <remarks>
/// Steele, Lea and Flood 2014, "Fast splittable pseudorandom number generators", OOPSLA: the finalizer on seed + (i + 1)
/// times the golden gamma.
/// </remarks>
internal static class SplitMix
{
    /// <summary>A draw, 64 bits.</summary>
    public static ulong At(ulong seed, ulong index)
    {
        var z = unchecked(seed + ((index + 1UL) * 0x9E3779B97F4A7C15UL));
        z = unchecked((z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL);
        z = unchecked((z ^ (z >> 27)) * 0x94D049BB133111EBUL);
        return z ^ (z >> 31);
    }

    /// <summary>A draw from 0 to less than 1, of 53 bits.</summary>
    public static double Uniform(ulong seed, ulong index) =>
        (At(seed, index) >> 11) * (1.0 / 9007199254740992.0);
}

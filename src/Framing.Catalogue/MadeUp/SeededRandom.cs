using System.Numerics;

namespace Framing.Catalogue;

/// <summary>Random numbers that are the same on every machine: a seed and a number of the stream say them all.</summary>
/// <remarks>
/// A counter is scrambled (SplitMix64: G. Steele, D. Lea and C. Flood 2014, OOPSLA, "Fast splittable pseudorandom number
/// generators"); each stream starts at a scrambled place of its own.
/// </remarks>
internal struct SeededRandom
{
    private const ulong Step = 0x9E3779B97F4A7C15UL;

    private ulong state;

    public SeededRandom(ulong seed, ulong stream) =>
        state = Scramble(Scramble(seed + Step) ^ BitOperations.RotateLeft(stream * Step, 17));

    /// <summary>64 random bits.</summary>
    public ulong Bits() => Scramble(state += Step);

    /// <summary>A number from 0 (included) to 1 (left out).</summary>
    public double Share() => (Bits() >> 11) * (1.0 / (1UL << 53));

    /// <summary>The wait for the next of events that come once in a unit of time.</summary>
    public double Wait() => -Math.Log(1.0 - Share());

    private static ulong Scramble(ulong value)
    {
        value = (value ^ (value >> 30)) * 0xBF58476D1CE4E5B9UL;
        value = (value ^ (value >> 27)) * 0x94D049BB133111EBUL;
        return value ^ (value >> 31);
    }
}

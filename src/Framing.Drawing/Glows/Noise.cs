namespace Framing.Drawing;

/// <summary>Smooth random hills and valleys over a plane: always the same for the same seed, at every scale of drawing.</summary>
/// <remarks>
/// Values between 0 and 1 at the points of a square lattice, drawn from a scrambled count of the point, and between them a
/// smooth mix (value noise); several lattices, each finer and weaker than the last, are added up.
/// </remarks>
internal readonly struct Noise(ulong seed)
{
    private readonly ulong seed = seed;

    /// <summary>The sum of several octaves, 0 to 1, 0.5 in the mean.</summary>
    /// <param name="x">Across, in steps of the first lattice.</param>
    /// <param name="y">Up, in steps of the first lattice.</param>
    /// <param name="finest">
    /// The size of the smallest thing that can be shown, in steps of the first lattice: finer octaves fade out, so that
    /// nothing jumps from pixel to pixel.
    /// </param>
    public double At(double x, double y, double finest)
    {
        const int octaves = 7;
        double sum = 0.5,
            weight = 0.5,
            step = 1.0;
        for (ulong octave = 0; octave < octaves; octave++)
        {
            var shown = Math.Clamp((step / finest) - 1.0, 0.0, 1.0);
            if (shown == 0.0)
            {
                break;
            }

            // Each lattice is turned and moved, so that their lines never fall together.
            var (u, v) = (((0.8 * x) - (0.6 * y)) * 2.0, ((0.6 * x) + (0.8 * y)) * 2.0);
            sum += weight * shown * (Lattice(octave, x, y) - 0.5);
            (x, y) = (u + 17.3, v - 5.9);
            weight *= 0.52;
            step *= 0.5;
        }

        return Math.Clamp(sum, 0.0, 1.0);
    }

    private double Lattice(ulong octave, double x, double y)
    {
        var (west, south) = (Math.Floor(x), Math.Floor(y));
        var (i, j) = ((long)west, (long)south);
        var (u, v) = (Smooth(x - west), Smooth(y - south));
        var below = Mix(Value(octave, i, j), Value(octave, i + 1, j), u);
        var above = Mix(Value(octave, i, j + 1), Value(octave, i + 1, j + 1), u);
        return Mix(below, above, v);
    }

    private static double Smooth(double part) =>
        part * part * part * ((part * ((part * 6.0) - 15.0)) + 10.0);

    private static double Mix(double from, double to, double part) => from + ((to - from) * part);

    private double Value(ulong octave, long i, long j)
    {
        unchecked
        {
            var bits = seed + (octave * 0x9E3779B97F4A7C15UL);
            bits = Scramble(bits ^ ((ulong)i * 0xD6E8FEB86659FD93UL));
            bits = Scramble(bits ^ ((ulong)j * 0xA5A3564E7C3D1F2BUL));
            return (bits >> 11) * (1.0 / (1UL << 53));
        }
    }

    /// <summary>The last step of SplitMix64 (Steele, Lea and Flood 2014, OOPSLA).</summary>
    private static ulong Scramble(ulong value)
    {
        value = (value ^ (value >> 30)) * 0xBF58476D1CE4E5B9UL;
        value = (value ^ (value >> 27)) * 0x94D049BB133111EBUL;
        return value ^ (value >> 31);
    }
}

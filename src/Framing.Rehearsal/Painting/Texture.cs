using Framing.Sky;

namespace Framing.Rehearsal;

/// <summary>Smooth noise in space, several sizes added up: at directions of the sky it is the same on every frame.</summary>
internal static class Texture
{
    /// <summary>Noise of about -1 to 1.</summary>
    /// <param name="place">The place.</param>
    /// <param name="size">The largest structures.</param>
    /// <param name="octaves">How many finer sizes, each half as large and half as strong.</param>
    /// <param name="seed">Which noise.</param>
    public static double At(Vector3D place, double size, int octaves, ulong seed)
    {
        var (sum, weight, total) = (0.0, 1.0, 0.0);
        var at = place * (1.0 / size);
        for (var octave = 0; octave < octaves; octave++)
        {
            sum += weight * Smooth(at, seed + (ulong)octave);
            total += weight;
            weight *= 0.55;

            // Turned a little at each step, so that no lattice shows.
            at = new(
                (1.7 * at.X) + (1.1 * at.Y) + 0.37,
                (1.7 * at.Y) - (1.1 * at.X) - 0.11,
                (2.0 * at.Z) + 0.53
            );
        }

        return 1.6 * sum / total;
    }

    private static double Smooth(Vector3D at, ulong seed)
    {
        var (i, j, k) = ((long)Math.Floor(at.X), (long)Math.Floor(at.Y), (long)Math.Floor(at.Z));
        var (u, v, w) = (Ease(at.X - i), Ease(at.Y - j), Ease(at.Z - k));
        return double.Lerp(
            double.Lerp(
                double.Lerp(Knot(i, j, k, seed), Knot(i + 1, j, k, seed), u),
                double.Lerp(Knot(i, j + 1, k, seed), Knot(i + 1, j + 1, k, seed), u),
                v
            ),
            double.Lerp(
                double.Lerp(Knot(i, j, k + 1, seed), Knot(i + 1, j, k + 1, seed), u),
                double.Lerp(Knot(i, j + 1, k + 1, seed), Knot(i + 1, j + 1, k + 1, seed), u),
                v
            ),
            w
        );
    }

    private static double Ease(double t) => t * t * (3.0 - (2.0 * t));

    private static double Knot(long i, long j, long k, ulong seed)
    {
        var bits = RandomStream.Scramble(
            (seed * 0x9E3779B97F4A7C15UL)
                + ((ulong)i * 0xD1342543DE82EF95UL)
                + ((ulong)j * 0xAF251AF3B0F025B5UL)
                + ((ulong)k * 0xC2B2AE3D27D4EB4FUL)
        );
        return ((bits >> 11) * (2.0 / (1UL << 53))) - 1.0;
    }
}

using Framing.Sky;

namespace Framing.DemoFrames;

/// <summary>An invented, seeded texture of clouds over a tangent plane: smooth noise of several sizes added up.</summary>
internal sealed class CloudTexture(SkyDirection centre, ulong seed)
{
    private readonly TangentPlane plane = new(centre);

    /// <summary>The place of a direction in the plane, in degrees east and north of its centre.</summary>
    public (double East, double North) Place(SkyDirection direction)
    {
        var point = plane.Project(direction);
        return (point.Xi * 180.0 / Math.PI, point.Eta * 180.0 / Math.PI);
    }

    /// <summary>Clouds from -1 to 1, mostly near 0.</summary>
    /// <param name="east">Degrees east.</param>
    /// <param name="north">Degrees north.</param>
    /// <param name="size">The largest clouds, in degrees.</param>
    /// <param name="octaves">How many finer sizes are added, each half as large and weaker.</param>
    public double Clouds(double east, double north, double size, int octaves)
    {
        var (sum, weight, total) = (0.0, 1.0, 0.0);
        for (var octave = 0; octave < octaves; octave++)
        {
            // Each size is turned against the one before, so that no lattice shows.
            var (sin, cos) = Math.SinCos(0.7 + (1.9 * octave));
            var x = ((east * cos) - (north * sin)) / size;
            var y = ((east * sin) + (north * cos)) / size;
            sum += weight * Smooth(x, y, seed + (ulong)octave);
            total += weight;
            weight *= 0.55;
            size *= 0.5;
        }

        return sum / total * 1.8;
    }

    /// <summary>Bright threads from 0 to 1: where clouds change their sign.</summary>
    public double Threads(double east, double north, double size, int octaves)
    {
        var bend = 0.35 * size * Clouds(east + 17.0, north - 5.0, size * 1.7, 2);
        var ridge = 1.0 - Math.Abs(Clouds(east + bend, north - bend, size, octaves));
        return Math.Pow(Math.Max(0.0, ridge), 6.0);
    }

    private static double Smooth(double x, double y, ulong seed)
    {
        var (column, row) = (Math.Floor(x), Math.Floor(y));
        var (u, v) = (Ease(x - column), Ease(y - row));
        var bottom = double.Lerp(At(column, row, seed), At(column + 1, row, seed), u);
        var top = double.Lerp(At(column, row + 1, seed), At(column + 1, row + 1, seed), u);
        return double.Lerp(bottom, top, v);
    }

    private static double Ease(double t) => t * t * t * ((t * ((t * 6.0) - 15.0)) + 10.0);

    /// <summary>A number from -1 to 1 for each corner of the lattice (splitmix64, public domain).</summary>
    private static double At(double column, double row, ulong seed)
    {
        var z = seed * 0x9E3779B97F4A7C15UL;
        z +=
            ((ulong)(long)column * 0xD1342543DE82EF95UL)
            ^ ((ulong)(long)row * 0xAF251AF3B0F025B5UL);
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        z ^= z >> 31;
        return ((z >> 11) * (2.0 / 9007199254740992.0)) - 1.0;
    }
}

using System.Numerics;

namespace Framing.Sky;

/// <summary>Many directions at a time: from right ascension and declination to vectors and back, and turns of the sphere.</summary>
/// <remarks>What is in doubt, or has no answer, becomes NaN: whoever asks then asks for that one alone.</remarks>
internal static class SphereLanes
{
    private static readonly Vector<double> None = Vector.Create(double.NaN);

    /// <summary>Vectors of any length become right ascension (0 to less than 360) and declination in degrees.</summary>
    /// <param name="x">First components; receives right ascensions.</param>
    /// <param name="y">Second components; receives declinations.</param>
    /// <param name="z">Third components.</param>
    /// <returns>True when each has an answer; the poles are in doubt.</returns>
    public static bool ToDegrees(
        Span<Vector<double>> x,
        Span<Vector<double>> y,
        ReadOnlySpan<Vector<double>> z
    )
    {
        y = y[..x.Length];
        z = z[..x.Length];
        var good = Vector<long>.AllBitsSet;
        var turn = Vector.Create(360.0);
        for (var i = 0; i < x.Length; i++)
        {
            var across = Vector.SquareRoot(Vector.MultiplyAddEstimate(x[i], x[i], y[i] * y[i]));
            var longitude = DegreeLanes.Atan2(y[i], x[i]);
            var latitude = DegreeLanes.AtanAcross(z[i], across);

            // A little below 0 plus a full turn rounds to the full turn, which is 0; + 0 takes the sign off -0.
            longitude = Vector.ConditionalSelect(
                Vector.LessThan(longitude, Vector<double>.Zero),
                longitude + turn,
                longitude
            );
            longitude = Vector.ConditionalSelect(
                Vector.GreaterThanOrEqual(longitude, turn),
                Vector<double>.Zero,
                longitude + Vector<double>.Zero
            );
            var sum = longitude + latitude + x[i] + y[i] + z[i];
            var sound = Vector.Equals(sum - sum, Vector<double>.Zero);
            good &= sound;
            x[i] = Vector.ConditionalSelect(sound, longitude, None);
            y[i] = latitude;
        }

        return good == Vector<long>.AllBitsSet;
    }

    /// <summary>
    /// Right ascensions and declinations in degrees become unit vectors; NaN at a pole, where a right ascension may still
    /// count, and beyond it, or a million turns away.
    /// </summary>
    /// <param name="x">Right ascensions; receives first components.</param>
    /// <param name="y">Declinations; receives second components.</param>
    /// <param name="z">Receives third components.</param>
    public static void FromDegrees(
        Span<Vector<double>> x,
        Span<Vector<double>> y,
        Span<Vector<double>> z
    )
    {
        y = y[..x.Length];
        z = z[..x.Length];
        for (var i = 0; i < x.Length; i++)
        {
            var sound =
                Vector.LessThan(Vector.Abs(y[i]), Vector.Create(90.0))
                & Vector.LessThan(Vector.Abs(x[i]), Vector.Create(3.6e8));
            DegreeLanes.SinCos(y[i], out var sinDec, out var cosDec);
            DegreeLanes.SinCos(x[i], out var sinRa, out var cosRa);
            cosDec = Vector.ConditionalSelect(sound, cosDec, None);
            x[i] = cosDec * cosRa;
            y[i] = cosDec * sinRa;
            z[i] = sinDec;
        }
    }

    /// <summary>Vectors of any length become vectors of length 1.</summary>
    public static void Unit(Span<Vector<double>> x, Span<Vector<double>> y, Span<Vector<double>> z)
    {
        y = y[..x.Length];
        z = z[..x.Length];
        for (var i = 0; i < x.Length; i++)
        {
            var perLength =
                Vector<double>.One
                / Vector.SquareRoot(
                    Vector.MultiplyAddEstimate(
                        x[i],
                        x[i],
                        Vector.MultiplyAddEstimate(y[i], y[i], z[i] * z[i])
                    )
                );
            x[i] *= perLength;
            y[i] *= perLength;
            z[i] *= perLength;
        }
    }

    /// <summary>Each (x, y, z) becomes first · x + second · y + third · z.</summary>
    public static void Combine(
        Vector3D first,
        Vector3D second,
        Vector3D third,
        Span<Vector<double>> x,
        Span<Vector<double>> y,
        Span<Vector<double>> z
    )
    {
        y = y[..x.Length];
        z = z[..x.Length];
        var (ax, ay, az) = Lanes(first);
        var (bx, by, bz) = Lanes(second);
        var (cx, cy, cz) = Lanes(third);
        for (var i = 0; i < x.Length; i++)
        {
            var (a, b, c) = (x[i], y[i], z[i]);
            x[i] = Sum(a, ax, b, bx, c * cx);
            y[i] = Sum(a, ay, b, by, c * cy);
            z[i] = Sum(a, az, b, bz, c * cz);
        }
    }

    /// <summary>Each (x, y, z) becomes its scalar products with three vectors.</summary>
    public static void Products(
        Vector3D first,
        Vector3D second,
        Vector3D third,
        Span<Vector<double>> x,
        Span<Vector<double>> y,
        Span<Vector<double>> z
    ) =>
        Combine(
            new(first.X, second.X, third.X),
            new(first.Y, second.Y, third.Y),
            new(first.Z, second.Z, third.Z),
            x,
            y,
            z
        );

    private static (Vector<double> X, Vector<double> Y, Vector<double> Z) Lanes(Vector3D v) =>
        (Vector.Create(v.X), Vector.Create(v.Y), Vector.Create(v.Z));

    private static Vector<double> Sum(
        Vector<double> a,
        Vector<double> first,
        Vector<double> b,
        Vector<double> second,
        Vector<double> rest
    ) => Vector.MultiplyAddEstimate(a, first, Vector.MultiplyAddEstimate(b, second, rest));
}

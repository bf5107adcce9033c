using System.Numerics;
using System.Runtime.CompilerServices;

namespace Framing.Sky;

/// <summary>Sines, cosines and arc tangents of several numbers at a time, with angles in degrees.</summary>
/// <remarks>
/// <para>
/// Good to 2 units in the last place over the whole range. Whole quarters of a turn are exact: degrees are reduced to
/// -45 to 45 without rounding. A number that is not finite gives one that is not.
/// </para>
/// <para>Coefficients: interpolation at Chebyshev nodes in 40 digits (tests/reference/wcs/make_polynomials.py).</para>
/// </remarks>
internal static class DegreeLanes
{
    /// <summary>Angles of up to so many degrees may be asked for.</summary>
    public const double Most = 1e12;

    /// <summary>1.5 · 2^52: added to a number, it leaves the number's nearest whole one in the lowest bits.</summary>
    private const double Rounder = 6755399441055744.0;

    /// <summary>The tangent of 22.5 degrees: from there on 45 degrees are taken off.</summary>
    private const double EighthTangent = 0.41421356237309503;

    /// <summary>Sine and cosine.</summary>
    /// <param name="degrees">Angles of at most <see cref="Most"/> degrees.</param>
    /// <param name="sin">The sines.</param>
    /// <param name="cos">The cosines.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void SinCos(
        Vector<double> degrees,
        out Vector<double> sin,
        out Vector<double> cos
    )
    {
        var shifted = (degrees * Vector.Create(1.0 / 90.0)) + Vector.Create(Rounder);
        var quarter = Vector.AsVectorInt64(shifted);
        var rest = degrees - ((shifted - Vector.Create(Rounder)) * Vector.Create(90.0));
        var w = rest * rest;
        var s = Next(Vector.Create(2.2164549925382185e-33), w, -1.1467564767121785e-27);
        var c = Next(Vector.Create(-2.7667313176695794e-36), w, 1.667912799345514e-30);
        s = Next(s, w, 4.1412665383751066e-22);
        c = Next(c, w, -7.227874204196915e-25);
        s = Next(s, w, -9.788384855390966e-17);
        c = Next(c, w, 2.1354943029151806e-19);
        s = Next(s, w, 1.3496016231611539e-11);
        c = Next(c, w, -3.925831985740801e-14);
        s = Next(s, w, -8.860961557012953e-07);
        c = Next(c, w, 3.86632385156299e-09);
        s = Next(s, w, 0.017453292519943295) * rest;
        c = Next(c, w, -0.0001523087098933543);
        c = Next(c, w, 1.0);

        var one = Vector.Create(1L);
        var odd = Vector.Equals(quarter & one, one);
        var sinSign = Vector.ShiftLeft(quarter & Vector.Create(2L), 62);
        var cosSign = Vector.ShiftLeft((quarter + one) & Vector.Create(2L), 62);
        sin = Vector.AsVectorDouble(
            Vector.AsVectorInt64(Vector.ConditionalSelect(odd, c, s)) ^ sinSign
        );
        cos = Vector.AsVectorDouble(
            Vector.AsVectorInt64(Vector.ConditionalSelect(odd, s, c)) ^ cosSign
        );
    }

    /// <summary>The angle of a point in a plane.</summary>
    /// <param name="y">Its second coordinate.</param>
    /// <param name="x">Its first; not both 0, which has no angle and gives NaN.</param>
    /// <returns>Degrees from the first axis towards the second, -180 to 180.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector<double> Atan2(Vector<double> y, Vector<double> x)
    {
        var angle = Steepness(Vector.Abs(y), Vector.Abs(x));
        angle = Vector.ConditionalSelect(
            Vector.LessThan(x, Vector<double>.Zero),
            Vector.Create(180.0) - angle,
            angle
        );
        return Vector.CopySign(angle, y);
    }

    /// <summary>The angle of a point that does not lie left of the second axis.</summary>
    /// <param name="y">Its second coordinate.</param>
    /// <param name="x">Its first, not negative; not both 0.</param>
    /// <returns>Degrees, -90 to 90.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector<double> AtanAcross(Vector<double> y, Vector<double> x) =>
        Vector.CopySign(Steepness(Vector.Abs(y), x), y);

    /// <summary>A step of Horner's rule.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector<double> Next(Vector<double> sum, Vector<double> w, double term) =>
        Vector.MultiplyAddEstimate(sum, w, Vector.Create(term));

    /// <summary>The angle whose tangent is up / along, both not negative: 0 to 90 degrees.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector<double> Steepness(Vector<double> up, Vector<double> along)
    {
        var steep = Vector.GreaterThan(up, along);
        var low = Vector.ConditionalSelect(steep, along, up);
        var high = Vector.ConditionalSelect(steep, up, along);
        var wide = Vector.GreaterThan(low, high * Vector.Create(EighthTangent));
        var t =
            Vector.ConditionalSelect(wide, low - high, low)
            / Vector.ConditionalSelect(wide, low + high, high);
        var w = t * t;
        var sum = Next(Vector.Create(-1.020088122310942), w, 2.1751714249750154);
        sum = Next(sum, w, -2.884871029096118);
        sum = Next(sum, w, 3.350007882807281);
        sum = Next(sum, w, -3.817589282035616);
        sum = Next(sum, w, 4.407217254722591);
        sum = Next(sum, w, -5.208700187133716);
        sum = Next(sum, w, 6.366197513713131);
        sum = Next(sum, w, -8.185111355305114);
        sum = Next(sum, w, 11.459155902582566);
        sum = Next(sum, w, -19.098593171027318);
        sum = Next(sum, w, 57.29577951308232);
        var eighth = Vector.ConditionalSelect(wide, Vector.Create(45.0), Vector<double>.Zero);
        var angle = Vector.MultiplyAddEstimate(sum, t, eighth);
        return Vector.ConditionalSelect(steep, Vector.Create(90.0) - angle, angle);
    }
}

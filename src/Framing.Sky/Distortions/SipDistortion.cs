using System.Numerics;
using System.Runtime.CompilerServices;

namespace Framing.Sky;

/// <summary>The distortion of a lens as polynomials of pixels: the SIP convention.</summary>
/// <remarks>
/// <para>
/// u and v are pixels from the reference pixel. Undistorted they are u + A(u, v) and v + B(u, v); the CD matrix takes these.
/// </para>
/// <para>
/// The reverse polynomials AP and BP of a header are good to a fraction of a pixel only: they are where the way back
/// begins, and never the answer.
/// </para>
/// <para>Source: Shupe and others 2005, the SIP convention for representing distortion, FITS registry.</para>
/// </remarks>
public sealed class SipDistortion : Distortion
{
    private readonly PolynomialLanes lanes;

    /// <summary>Makes a distortion.</summary>
    /// <param name="a">A: what is added to u, in pixels.</param>
    /// <param name="b">B: what is added to v.</param>
    /// <param name="ap">AP: what is added to the undistorted u on the way back; null where nothing is known.</param>
    /// <param name="bp">BP: the same of v.</param>
    public SipDistortion(
        PixelPolynomial a,
        PixelPolynomial b,
        PixelPolynomial? ap = null,
        PixelPolynomial? bp = null
    )
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        (A, B, Ap, Bp) = (a, b, ap, bp);
        lanes = new(a, b);
    }

    /// <summary>What is added to u.</summary>
    public PixelPolynomial A { get; }

    /// <summary>What is added to v.</summary>
    public PixelPolynomial B { get; }

    /// <summary>The reverse of A, approximately; null where nothing is known.</summary>
    public PixelPolynomial? Ap { get; }

    /// <summary>The reverse of B.</summary>
    public PixelPolynomial? Bp { get; }

    private protected override double Least => 1.0;

    /// <summary>The same distortion in other pixels.</summary>
    /// <param name="alongX">How many old pixels make a new one along x; negative where the axis is reversed.</param>
    /// <param name="alongY">The same along y.</param>
    /// <returns>The distortion of the new pixels.</returns>
    internal SipDistortion Scaled(double alongX, double alongY)
    {
        return new(Of(A, alongX)!, Of(B, alongY)!, Of(Ap, alongX), Of(Bp, alongY));

        PixelPolynomial? Of(PixelPolynomial? old, double along) =>
            old?.Scaled((p, q) => Math.Pow(alongX, p) * Math.Pow(alongY, q) / along);
    }

    internal override void Apply(Span<Vector<double>> u, Span<Vector<double>> v) =>
        DistortionLanes.Apply(new Lanes(lanes), u, v);

    internal override void Undo(Span<Vector<double>> u, Span<Vector<double>> v) =>
        DistortionLanes.Undo(new Lanes(lanes), u, v);

    private protected override void Map(
        double u,
        double v,
        out PlanePoint image,
        out PixelMatrix slope
    )
    {
        image = new(u + A.At(u, v, out var au, out var av), v + B.At(u, v, out var bu, out var bv));
        slope = new(1.0 + au, av, bu, 1.0 + bv);
    }

    private protected override PlanePoint Start(double imageU, double imageV)
    {
        if (Ap is null || Bp is null)
        {
            return new(imageU, imageV);
        }

        // Far outside its picture the reverse polynomial leads astray: then the plain place is the better start.
        var start = new PlanePoint(imageU + Ap.At(imageU, imageV), imageV + Bp.At(imageU, imageV));
        return Miss(start) < Miss(new(imageU, imageV)) ? start : new(imageU, imageV);

        double Miss(PlanePoint place)
        {
            Map(place.Xi, place.Eta, out var image, out var slope);
            return slope.Determinant > 0.0
                ? double.Hypot(image.Xi - imageU, image.Eta - imageV)
                : double.PositiveInfinity;
        }
    }

    private readonly struct Lanes(PolynomialLanes terms) : IDistortionLanes
    {
        public double Least => 1.0;

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public void Map(
            Vector<double> u,
            Vector<double> v,
            out Vector<double> imageU,
            out Vector<double> imageV
        )
        {
            terms.At(u, v, out var a, out var b);
            (imageU, imageV) = (u + a, v + b);
        }

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public void Map(
            Vector<double> u,
            Vector<double> v,
            out Vector<double> imageU,
            out Vector<double> imageV,
            out SlopeLanes slopes
        )
        {
            terms.At(u, v, out var a, out var b, out var s);
            (imageU, imageV) = (u + a, v + b);
            slopes = s with { Uu = s.Uu + Vector<double>.One, Vv = s.Vv + Vector<double>.One };
        }

        // The plain place: it is as near as what a reverse polynomial gives after one step more.
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public void Start(ref Vector<double> u, ref Vector<double> v) { }
    }
}

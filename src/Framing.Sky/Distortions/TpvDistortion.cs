using System.Numerics;
using System.Runtime.CompilerServices;

namespace Framing.Sky;

/// <summary>The distortion of a lens as polynomials of the tangent plane: the TPV convention.</summary>
/// <remarks>
/// <para>
/// ξ and η are degrees of the plane before the projection. Axis by axis the terms are, in the order of their number m: 1,
/// x, y, r, x², xy, y², x³, x²y, xy², y³, r³, then the fourth and fifth orders, r⁵, the sixth and seventh, r⁷; x is the
/// axis's own coordinate, y the other one, r = sqrt(ξ² + η²).
/// </para>
/// <para>Source: the TPV world coordinate system, FITS registry.</para>
/// </remarks>
public sealed class TpvDistortion : Distortion
{
    /// <summary>How many terms an axis has.</summary>
    public const int Terms = 40;

    private const int Order = 7;
    private readonly PixelPolynomial xi;
    private readonly PixelPolynomial eta;

    // Coefficients of r, r³, r⁵, r⁷.
    private readonly double[] xiRadial;
    private readonly double[] etaRadial;
    private readonly PolynomialLanes lanes;
    private readonly PixelMatrix start;

    /// <summary>Makes a distortion.</summary>
    /// <param name="longitude">PVi_0 to PVi_39 of the axis of right ascension; 1 for m = 1 and 0 elsewhere changes nothing.</param>
    /// <param name="latitude">The same of the axis of declination.</param>
    /// <exception cref="ArgumentException">There are not 40 terms, or one is not finite.</exception>
    public TpvDistortion(ReadOnlySpan<double> longitude, ReadOnlySpan<double> latitude)
    {
        (xi, xiRadial) = Read(longitude, isSwapped: false);
        (eta, etaRadial) = Read(latitude, isSwapped: true);
        lanes = new(xi, eta);
        var linear = new PixelMatrix(xi[1, 0], xi[0, 1], eta[1, 0], eta[0, 1]);
        start = linear.Determinant > 0.0 ? linear.Inverse() : new(1.0, 0.0, 0.0, 1.0);
    }

    private protected override double Least => 1e-6;

    internal override void Apply(Span<Vector<double>> u, Span<Vector<double>> v) =>
        DistortionLanes.Apply(new Lanes(this), u, v);

    internal override void Undo(Span<Vector<double>> u, Span<Vector<double>> v) =>
        DistortionLanes.Undo(new Lanes(this), u, v);

    private protected override void Map(
        double u,
        double v,
        out PlanePoint image,
        out PixelMatrix slope
    )
    {
        var x = xi.At(u, v, out var xu, out var xv);
        var y = eta.At(u, v, out var yu, out var yv);
        var r = double.Hypot(u, v);
        if (r > 0.0)
        {
            var (outX, slopeX) = Radial(xiRadial, r);
            var (outY, slopeY) = Radial(etaRadial, r);
            (x, y) = (x + outX, y + outY);
            (xu, xv) = (xu + (slopeX * u / r), xv + (slopeX * v / r));
            (yu, yv) = (yu + (slopeY * u / r), yv + (slopeY * v / r));
        }

        image = new(x, y);
        slope = new(xu, xv, yu, yv);
    }

    private protected override PlanePoint Start(double imageU, double imageV)
    {
        // The inverse of the linear terms.
        var (u, v) = (imageU - xi[0, 0], imageV - eta[0, 0]);
        return new((start.Cd11 * u) + (start.Cd12 * v), (start.Cd21 * u) + (start.Cd22 * v));
    }

    private static (double Value, double Slope) Radial(double[] radial, double r)
    {
        var square = r * r;
        return (
            r
                * (
                    radial[0]
                    + (square * (radial[1] + (square * (radial[2] + (square * radial[3])))))
                ),
            radial[0]
                + (
                    square
                    * (
                        (3.0 * radial[1])
                        + (square * ((5.0 * radial[2]) + (square * 7.0 * radial[3])))
                    )
                )
        );
    }

    private static (PixelPolynomial, double[]) Read(ReadOnlySpan<double> terms, bool isSwapped)
    {
        if (terms.Length != Terms)
        {
            throw new ArgumentException(
                FormattableString.Invariant($"{terms.Length} terms were given; there are {Terms}."),
                nameof(terms)
            );
        }

        var (plane, radial) = (new double[Order + 1, Order + 1], new double[4]);
        var m = 0;
        for (var order = 0; order <= Order; order++)
        {
            for (var q = 0; q <= order; q++)
            {
                var (own, other) = isSwapped ? (q, order - q) : (order - q, q);
                plane[own, other] = terms[m++];
            }

            if (order % 2 == 1)
            {
                radial[order / 2] = terms[m++];
            }
        }

        return (new(Order, (p, q) => plane[p, q]), radial);
    }

    private readonly struct Lanes(TpvDistortion of) : IDistortionLanes
    {
        public double Least => 1e-6;

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public void Map(
            Vector<double> u,
            Vector<double> v,
            out Vector<double> imageU,
            out Vector<double> imageV
        )
        {
            of.lanes.At(u, v, out imageU, out imageV);
            var square = (u * u) + (v * v);
            var r = Vector.SquareRoot(square);
            imageU += r * Radial(of.xiRadial, square);
            imageV += r * Radial(of.etaRadial, square);
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
            of.lanes.At(u, v, out imageU, out imageV, out slopes);

            // The sliver keeps the middle, where r has no direction and no terms count, from 0 / 0.
            var square = (u * u) + (v * v);
            var r = Vector.SquareRoot(square);
            var (alongU, alongV) = (
                u / (r + Vector.Create(1e-150)),
                v / (r + Vector.Create(1e-150))
            );
            imageU += r * Radial(of.xiRadial, square);
            imageV += r * Radial(of.etaRadial, square);
            var (slopeXi, slopeEta) = (
                RadialSlope(of.xiRadial, square),
                RadialSlope(of.etaRadial, square)
            );
            slopes = new(
                slopes.Uu + (slopeXi * alongU),
                slopes.Uv + (slopeXi * alongV),
                slopes.Vu + (slopeEta * alongU),
                slopes.Vv + (slopeEta * alongV)
            );
        }

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public void Start(ref Vector<double> u, ref Vector<double> v)
        {
            var (fromU, fromV) = (u - Vector.Create(of.xi[0, 0]), v - Vector.Create(of.eta[0, 0]));
            u = (fromU * of.start.Cd11) + (fromV * of.start.Cd12);
            v = (fromU * of.start.Cd21) + (fromV * of.start.Cd22);
        }

        private static Vector<double> Radial(double[] terms, Vector<double> square) =>
            Vector.Create(terms[0])
            + (
                square
                * (
                    Vector.Create(terms[1])
                    + (square * (Vector.Create(terms[2]) + (square * terms[3])))
                )
            );

        private static Vector<double> RadialSlope(double[] terms, Vector<double> square) =>
            Vector.Create(terms[0])
            + (
                square
                * (
                    Vector.Create(3.0 * terms[1])
                    + (square * (Vector.Create(5.0 * terms[2]) + (square * (7.0 * terms[3]))))
                )
            );
    }
}

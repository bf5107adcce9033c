using System.Numerics;

namespace Framing.Sky;

/// <summary>A distortion of a plane: where a point of it really lies, and back.</summary>
/// <remarks>
/// <para>
/// Immutable. The way there is a formula; the way back is Newton's iteration with the exact derivatives, whose steps are
/// halved until they bring the point nearer. It says so when it does not arrive.
/// </para>
/// <para>
/// Polynomials fold over far outside the picture. A point is found only on the side of the fold on which the
/// middle lies: where the distortion keeps the sense of turning.
/// </para>
/// </remarks>
public abstract class Distortion
{
    private const int MostSteps = 50;

    private protected Distortion() { }

    /// <summary>The way there.</summary>
    /// <param name="u">First coordinate of the place as it is counted.</param>
    /// <param name="v">Second coordinate.</param>
    /// <returns>The place as it would be without distortion of the lens.</returns>
    public (double U, double V) Apply(double u, double v)
    {
        Map(u, v, out var image, out _);
        return (image.Xi, image.Eta);
    }

    /// <summary>The way back.</summary>
    /// <param name="imageU">First coordinate of the place without distortion.</param>
    /// <param name="imageV">Second coordinate.</param>
    /// <param name="place">The place whose image that is; meaningless where the answer is a failure.</param>
    /// <returns>None, or NotConverged.</returns>
    /// <remarks>Found to within rounding: 1e-12 of its own size.</remarks>
    public MapFailure Undo(double imageU, double imageV, out PlanePoint place)
    {
        place = Start(imageU, imageV);
        Map(place.Xi, place.Eta, out var image, out var slope);
        var miss = new PlanePoint(imageU - image.Xi, imageV - image.Eta);
        for (var step = 0; step < MostSteps; step++)
        {
            var det = slope.Determinant;
            if (!(det > 1e-9 * Size(slope)))
            {
                return MapFailure.NotConverged;
            }

            var move = new PlanePoint(
                ((slope.Cd22 * miss.Xi) - (slope.Cd12 * miss.Eta)) / det,
                ((slope.Cd11 * miss.Eta) - (slope.Cd21 * miss.Xi)) / det
            );
            var rounding = 1e-15 * (Math.Abs(place.Xi) + Math.Abs(place.Eta) + Least);
            if (Math.Abs(move.Xi) + Math.Abs(move.Eta) <= rounding)
            {
                place += move;
                return MapFailure.None;
            }

            if (!TryMove(ref place, ref miss, ref slope, move, imageU, imageV))
            {
                // Nothing nearer is found: at the answer that is rounding, elsewhere a dead end.
                return Math.Abs(move.Xi) + Math.Abs(move.Eta) <= 1e4 * rounding
                    ? MapFailure.None
                    : MapFailure.NotConverged;
            }
        }

        return MapFailure.NotConverged;
    }

    /// <summary>The way there, many places at a time, in place.</summary>
    internal abstract void Apply(Span<Vector<double>> u, Span<Vector<double>> v);

    /// <summary>The way back, many images at a time, in place; NaN where <see cref="Undo(double, double, out PlanePoint)"/> shall say.</summary>
    internal abstract void Undo(Span<Vector<double>> u, Span<Vector<double>> v);

    /// <summary>A length below which nothing matters, in the unit of the plane.</summary>
    private protected abstract double Least { get; }

    /// <summary>The image of a place and the derivative there.</summary>
    private protected abstract void Map(
        double u,
        double v,
        out PlanePoint image,
        out PixelMatrix slope
    );

    /// <summary>Where the way back begins.</summary>
    private protected abstract PlanePoint Start(double imageU, double imageV);

    private static double Size(PixelMatrix m) =>
        (m.Cd11 * m.Cd11) + (m.Cd12 * m.Cd12) + (m.Cd21 * m.Cd21) + (m.Cd22 * m.Cd22);

    /// <summary>Goes along a step, or a half, a quarter, ... of it, until the image is nearer to the wanted one.</summary>
    private bool TryMove(
        ref PlanePoint place,
        ref PlanePoint miss,
        ref PixelMatrix slope,
        PlanePoint move,
        double imageU,
        double imageV
    )
    {
        var distance = double.Hypot(miss.Xi, miss.Eta);
        for (var part = 1.0; part > 1e-3; part /= 2.0)
        {
            var trial = place + (move * part);
            Map(trial.Xi, trial.Eta, out var image, out var there);
            var left = new PlanePoint(imageU - image.Xi, imageV - image.Eta);
            if (double.Hypot(left.Xi, left.Eta) < distance * (1.0 - (0.1 * part)))
            {
                (place, miss, slope) = (trial, left, there);
                return true;
            }
        }

        return false;
    }
}

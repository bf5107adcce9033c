using System.Numerics;

namespace Framing.Sky;

/// <summary>World coordinates of a picture in the tangent projection (FITS TAN): from pixels to the sky and back.</summary>
/// <remarks>
/// <para>
/// Immutable. Source: Calabretta and Greisen 2002, A&amp;A 395, 1077; the pole of the projection is the reference point and
/// LONPOLE is 180°.
/// </para>
/// <para>
/// 180° is the standard's default, except where CRVAL2 is exactly 90: there a header without LONPOLE means 0. A reader
/// turns such a matrix with <see cref="PixelMatrix.WithLonPole"/>; a writer always writes LONPOLE = 180.
/// </para>
/// </remarks>
public sealed class TanWorldCoordinates : WorldCoordinates
{
    private readonly TangentPlane plane;
    private readonly PixelMatrix inverse;

    /// <summary>Makes world coordinates.</summary>
    /// <param name="referencePixel">CRPIX: the pixel position of the tangent point; may lie outside the picture.</param>
    /// <param name="referenceDirection">CRVAL: the direction of the tangent point.</param>
    /// <param name="matrix">The CD matrix; must be usable.</param>
    /// <exception cref="ArgumentException">The matrix is singular or not finite, or the reference is no place.</exception>
    public TanWorldCoordinates(
        PixelPosition referencePixel,
        SkyDirection referenceDirection,
        PixelMatrix matrix
    )
    {
        Check(referencePixel, matrix);

        ReferencePixel = referencePixel;
        Matrix = matrix;
        plane = new TangentPlane(referenceDirection);
        inverse = matrix.Inverse();
    }

    /// <inheritdoc/>
    public override string Projection => "TAN";

    /// <summary>CRPIX: the pixel position of the tangent point.</summary>
    public override PixelPosition ReferencePixel { get; }

    /// <summary>CRVAL: the direction of the tangent point.</summary>
    public override SkyDirection ReferenceDirection => plane.Centre;

    /// <summary>The CD matrix, degrees a pixel.</summary>
    public override PixelMatrix Matrix { get; }

    /// <summary>The direction on the sky that a place in the picture shows.</summary>
    /// <param name="pixel">The place, as FITS counts, finite.</param>
    /// <returns>The direction: in a tangent plane every place has one.</returns>
    public override SkyDirection PixelToSky(PixelPosition pixel)
    {
        const double radiansPerDegree = Math.PI / 180.0;
        var dx = (pixel.X - ReferencePixel.X) * radiansPerDegree;
        var dy = (pixel.Y - ReferencePixel.Y) * radiansPerDegree;
        return plane.Unproject(
            new((Matrix.Cd11 * dx) + (Matrix.Cd12 * dy), (Matrix.Cd21 * dx) + (Matrix.Cd22 * dy))
        );
    }

    /// <inheritdoc/>
    public override MapFailure PixelToSky(PixelPosition pixel, out SkyDirection direction)
    {
        // Further out than this the vector has no length that a number can hold.
        const double furthest = 1e150;
        if (!(Math.Abs(pixel.X) < furthest && Math.Abs(pixel.Y) < furthest))
        {
            direction = default;
            return MapFailure.OffTheMap;
        }

        direction = PixelToSky(pixel);
        return MapFailure.None;
    }

    /// <inheritdoc/>
    public override MapFailure SkyToPixel(SkyDirection direction, out PixelPosition pixel)
    {
        if (!plane.TryProject(direction, out var point))
        {
            pixel = default;
            return MapFailure.BehindThePlane;
        }

        const double degreesPerRadian = 180.0 / Math.PI;
        var x = point.Xi * degreesPerRadian;
        var y = point.Eta * degreesPerRadian;
        pixel = new(
            ReferencePixel.X + (inverse.Cd11 * x) + (inverse.Cd12 * y),
            ReferencePixel.Y + (inverse.Cd21 * x) + (inverse.Cd22 * y)
        );
        return MapFailure.None;
    }

    /// <inheritdoc/>
    internal override void PixelsToVectors(
        Span<Vector<double>> x,
        Span<Vector<double>> y,
        Span<Vector<double>> z
    )
    {
        // Beyond this the single call says what is off the map.
        var furthest = Vector.Create(1e100);
        const double radians = Math.PI / 180.0;
        var alongX = ((plane.East * Matrix.Cd11) + (plane.North * Matrix.Cd21)) * radians;
        var alongY = ((plane.East * Matrix.Cd12) + (plane.North * Matrix.Cd22)) * radians;
        for (var i = 0; i < x.Length; i++)
        {
            var near = Vector.LessThan(Vector.Abs(x[i]) + Vector.Abs(y[i]), furthest);
            z[i] = Vector.ConditionalSelect(near, Vector<double>.One, Vector.Create(double.NaN));
            x[i] -= Vector.Create(ReferencePixel.X);
            y[i] -= Vector.Create(ReferencePixel.Y);
        }

        SphereLanes.Combine(alongX, alongY, plane.Centre.Vector, x, y, z);
    }

    /// <inheritdoc/>
    internal override void VectorsToPixels(
        Span<Vector<double>> x,
        Span<Vector<double>> y,
        Span<Vector<double>> z
    )
    {
        const double degrees = 180.0 / Math.PI;
        SphereLanes.Products(
            ((plane.East * inverse.Cd11) + (plane.North * inverse.Cd12)) * degrees,
            ((plane.East * inverse.Cd21) + (plane.North * inverse.Cd22)) * degrees,
            plane.Centre.Vector,
            x,
            y,
            z
        );
        for (var i = 0; i < x.Length; i++)
        {
            // A right angle to within rounding is in doubt, and what lies behind has no place.
            var front = Vector.GreaterThan(z[i], Vector.Create(1e-12));
            var nearness = Vector.ConditionalSelect(
                front,
                Vector<double>.One / z[i],
                Vector.Create(double.NaN)
            );
            x[i] = (x[i] * nearness) + Vector.Create(ReferencePixel.X);
            y[i] = (y[i] * nearness) + Vector.Create(ReferencePixel.Y);
        }
    }

    /// <summary>The position angle of the picture's second axis (+y) at any place in it.</summary>
    /// <param name="pixel">The place, as FITS counts.</param>
    /// <returns>The position angle there, against the north of that place.</returns>
    public PositionAngle PositionAngleOfYAt(PixelPosition pixel)
    {
        _ = TryMatrixAt(pixel, out var matrix);
        return matrix.PositionAngleOfY;
    }

    /// <inheritdoc/>
    public override bool TryMatrixAt(PixelPosition pixel, out PixelMatrix matrix)
    {
        if (!TryPixelToSky(pixel, out var here))
        {
            matrix = default;
            return false;
        }

        // One pixel moves the vector from the eye to the plane by a step; what of it lies along the line of sight is at
        // right angles to east and north, so that over the vector's length it is the derivative itself.
        const double radians = Math.PI / 180.0;
        var nearness = radians * here.Vector.Dot(ReferenceDirection.Vector);
        matrix = InDegrees(
            here,
            ((plane.East * Matrix.Cd11) + (plane.North * Matrix.Cd21)) * nearness,
            ((plane.East * Matrix.Cd12) + (plane.North * Matrix.Cd22)) * nearness
        );
        return true;
    }

    /// <summary>The same picture with its rows stored in the opposite order.</summary>
    /// <param name="rows">NAXIS2, the number of rows.</param>
    /// <returns>World coordinates for the reversed rows.</returns>
    public override TanWorldCoordinates WithRowsReversed(int rows) =>
        new(ReferencePixelWithRowsReversed(rows), ReferenceDirection, Matrix.WithRowsReversed());

    /// <summary>The same picture with pixels joined, or resampled smaller.</summary>
    /// <param name="factor">How many old pixels make one new one along each axis; more than 0.</param>
    /// <returns>World coordinates for the new pixels: CRPIX' = (CRPIX - 0.5) / factor + 0.5.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The factor is not more than 0, or not finite.</exception>
    public override TanWorldCoordinates Binned(double factor) =>
        new(ReferencePixelBinned(factor), ReferenceDirection, Matrix.Binned(factor));

    /// <summary>The same picture with columns and rows cut away at its start.</summary>
    /// <param name="columns">Columns cut away.</param>
    /// <param name="rows">Rows cut away.</param>
    /// <returns>World coordinates of what is left.</returns>
    public override TanWorldCoordinates Cropped(int columns, int rows) =>
        new(new(ReferencePixel.X - columns, ReferencePixel.Y - rows), ReferenceDirection, Matrix);
}

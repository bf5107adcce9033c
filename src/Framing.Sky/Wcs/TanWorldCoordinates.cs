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
public sealed class TanWorldCoordinates
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
        if (!matrix.IsUsable)
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"The CD matrix is singular or not finite: {matrix.Cd11} {matrix.Cd12} {matrix.Cd21} {matrix.Cd22}."
                ),
                nameof(matrix)
            );
        }

        if (!double.IsFinite(referencePixel.X) || !double.IsFinite(referencePixel.Y))
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"The reference pixel is not finite: {referencePixel.X} {referencePixel.Y}."
                ),
                nameof(referencePixel)
            );
        }

        ReferencePixel = referencePixel;
        Matrix = matrix;
        plane = new TangentPlane(referenceDirection);
        var det = matrix.Determinant;
        inverse = new(matrix.Cd22 / det, -matrix.Cd12 / det, -matrix.Cd21 / det, matrix.Cd11 / det);
    }

    /// <summary>CRPIX: the pixel position of the tangent point.</summary>
    public PixelPosition ReferencePixel { get; }

    /// <summary>CRVAL: the direction of the tangent point.</summary>
    public SkyDirection ReferenceDirection => plane.Centre;

    /// <summary>The CD matrix, degrees a pixel.</summary>
    public PixelMatrix Matrix { get; }

    /// <summary>The direction on the sky that a place in the picture shows.</summary>
    /// <param name="pixel">The place, as FITS counts.</param>
    /// <returns>The direction.</returns>
    public SkyDirection PixelToSky(PixelPosition pixel)
    {
        const double radiansPerDegree = Math.PI / 180.0;
        var dx = (pixel.X - ReferencePixel.X) * radiansPerDegree;
        var dy = (pixel.Y - ReferencePixel.Y) * radiansPerDegree;
        return plane.Unproject(
            new((Matrix.Cd11 * dx) + (Matrix.Cd12 * dy), (Matrix.Cd21 * dx) + (Matrix.Cd22 * dy))
        );
    }

    /// <summary>The place in the picture, or beyond its edges, at which a direction appears.</summary>
    /// <param name="direction">Any direction.</param>
    /// <param name="pixel">The place, as FITS counts; meaningless when the answer is false.</param>
    /// <returns>False when the direction lies behind the tangent plane and appears nowhere.</returns>
    public bool TrySkyToPixel(SkyDirection direction, out PixelPosition pixel)
    {
        if (!plane.TryProject(direction, out var point))
        {
            pixel = default;
            return false;
        }

        const double degreesPerRadian = 180.0 / Math.PI;
        var x = point.Xi * degreesPerRadian;
        var y = point.Eta * degreesPerRadian;
        pixel = new(
            ReferencePixel.X + (inverse.Cd11 * x) + (inverse.Cd12 * y),
            ReferencePixel.Y + (inverse.Cd21 * x) + (inverse.Cd22 * y)
        );
        return true;
    }

    /// <summary>The position angle of the picture's second axis (+y) at any place in it.</summary>
    /// <param name="pixel">The place, as FITS counts.</param>
    /// <returns>The position angle there, against the north of that place.</returns>
    public PositionAngle PositionAngleOfYAt(PixelPosition pixel)
    {
        // One row up moves the unnormalised vector by this step; what of it lies along the line of sight is at right
        // angles to east and north, so this is the derivative itself.
        var here = PixelToSky(pixel);
        var step = (plane.East * Matrix.Cd12) + (plane.North * Matrix.Cd22);
        return PositionAngle.FromAngle(
            Angle.FromRadians(Math.Atan2(step.Dot(here.East), step.Dot(here.North)))
        );
    }

    /// <summary>The same picture with its rows stored in the opposite order.</summary>
    /// <param name="rows">NAXIS2, the number of rows.</param>
    /// <returns>World coordinates for the reversed rows.</returns>
    public TanWorldCoordinates WithRowsReversed(int rows) =>
        new(
            ReferencePixel with
            {
                Y = rows + 1 - ReferencePixel.Y,
            },
            ReferenceDirection,
            Matrix.WithRowsReversed()
        );

    /// <summary>The same picture with pixels joined, or resampled smaller.</summary>
    /// <param name="factor">How many old pixels make one new one along each axis; more than 0.</param>
    /// <returns>World coordinates for the new pixels: CRPIX' = (CRPIX - 0.5) / factor + 0.5.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The factor is not more than 0, or not finite.</exception>
    public TanWorldCoordinates Binned(double factor) =>
        factor > 0.0 && double.IsFinite(factor)
            ? new(
                new(
                    ((ReferencePixel.X - 0.5) / factor) + 0.5,
                    ((ReferencePixel.Y - 0.5) / factor) + 0.5
                ),
                ReferenceDirection,
                Matrix.Binned(factor)
            )
            : throw new ArgumentOutOfRangeException(
                nameof(factor),
                factor,
                "Pixels are joined by a finite factor of more than 0."
            );

    /// <summary>The same picture with columns and rows cut away at its start.</summary>
    /// <param name="columns">Columns cut away.</param>
    /// <param name="rows">Rows cut away.</param>
    /// <returns>World coordinates of what is left.</returns>
    public TanWorldCoordinates Cropped(int columns, int rows) =>
        new(new(ReferencePixel.X - columns, ReferencePixel.Y - rows), ReferenceDirection, Matrix);
}

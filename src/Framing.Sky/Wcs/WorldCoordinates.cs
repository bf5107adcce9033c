using System.Numerics;
using System.Runtime.CompilerServices;

namespace Framing.Sky;

/// <summary>Where a picture lies on the sky: from its pixels to directions and back, through any projection.</summary>
/// <remarks>
/// <para>Immutable, and safe to use from several threads at once. Directions are ICRS unless whoever made it says otherwise.</para>
/// <para>
/// Either way can fail: beyond the edge of an all-sky map a pixel shows nothing, and a direction may lie behind the plane
/// of the picture. The methods that return a <see cref="MapFailure"/> say why; those called Try say that much in a bool.
/// </para>
/// <para>
/// The plain case is <see cref="TanWorldCoordinates"/>: a tangent plane without distortion, whose pixels all have a
/// direction.
/// </para>
/// <para>Source: Greisen and Calabretta 2002, A&amp;A 395, 1061; Calabretta and Greisen 2002, A&amp;A 395, 1077.</para>
/// </remarks>
public abstract class WorldCoordinates
{
    private protected WorldCoordinates() { }

    /// <summary>The projection's code in FITS: "TAN", "SIN", "AIT".</summary>
    public abstract string Projection { get; }

    /// <summary>CRPIX: the pixel position of the reference point; may lie outside the picture.</summary>
    public abstract PixelPosition ReferencePixel { get; }

    /// <summary>CRVAL: the direction of the reference point.</summary>
    public abstract SkyDirection ReferenceDirection { get; }

    /// <summary>
    /// The linear part at the reference pixel: degrees of sky east and north a pixel, north being that of the reference
    /// direction.
    /// </summary>
    /// <remarks>For a tangent projection the CD matrix; its scale, position angle and parity are those of the picture there.</remarks>
    public abstract PixelMatrix Matrix { get; }

    /// <summary>The direction that a place in the picture shows.</summary>
    /// <param name="pixel">The place, as FITS counts.</param>
    /// <param name="direction">The direction; the default one where the answer is a failure.</param>
    /// <returns>None, or why there is no direction.</returns>
    public abstract MapFailure PixelToSky(PixelPosition pixel, out SkyDirection direction);

    /// <summary>The place in the picture, or beyond its edges, at which a direction appears.</summary>
    /// <param name="direction">Any direction but the default one.</param>
    /// <param name="pixel">The place, as FITS counts; meaningless where the answer is a failure.</param>
    /// <returns>None, or why it appears nowhere.</returns>
    public abstract MapFailure SkyToPixel(SkyDirection direction, out PixelPosition pixel);

    /// <summary>The same picture with its rows stored in the opposite order.</summary>
    /// <param name="rows">NAXIS2, the number of rows.</param>
    /// <returns>World coordinates for the reversed rows.</returns>
    public abstract WorldCoordinates WithRowsReversed(int rows);

    /// <summary>The same picture with pixels joined, or resampled smaller.</summary>
    /// <param name="factor">How many old pixels make one new one along each axis; more than 0.</param>
    /// <returns>World coordinates for the new pixels: CRPIX' = (CRPIX - 0.5) / factor + 0.5.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The factor is not more than 0, or not finite.</exception>
    public abstract WorldCoordinates Binned(double factor);

    /// <summary>The same picture with columns and rows cut away at its start.</summary>
    /// <param name="columns">Columns cut away.</param>
    /// <param name="rows">Rows cut away.</param>
    /// <returns>World coordinates of what is left.</returns>
    public abstract WorldCoordinates Cropped(int columns, int rows);

    /// <summary>The direction that a place in the picture shows.</summary>
    /// <param name="pixel">The place, as FITS counts.</param>
    /// <param name="direction">The direction; the default one when the answer is false.</param>
    /// <returns>False when the place shows none: see <see cref="PixelToSky(PixelPosition, out SkyDirection)"/> for why.</returns>
    public bool TryPixelToSky(PixelPosition pixel, out SkyDirection direction) =>
        PixelToSky(pixel, out direction) == MapFailure.None;

    /// <summary>The place in the picture, or beyond its edges, at which a direction appears.</summary>
    /// <param name="direction">Any direction but the default one.</param>
    /// <param name="pixel">The place, as FITS counts; meaningless when the answer is false.</param>
    /// <returns>False when it appears nowhere: see <see cref="SkyToPixel(SkyDirection, out PixelPosition)"/> for why.</returns>
    public bool TrySkyToPixel(SkyDirection direction, out PixelPosition pixel) =>
        SkyToPixel(direction, out pixel) == MapFailure.None;

    /// <summary>The direction that a place shows, for a place known to show one.</summary>
    /// <param name="pixel">The place, as FITS counts.</param>
    /// <returns>The direction.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The place shows no direction.</exception>
    public virtual SkyDirection PixelToSky(PixelPosition pixel)
    {
        var failure = PixelToSky(pixel, out var direction);
        return failure == MapFailure.None
            ? direction
            : throw new ArgumentOutOfRangeException(
                nameof(pixel),
                pixel,
                $"The pixel shows no direction ({failure})."
            );
    }

    /// <summary>The directions of many places.</summary>
    /// <param name="x">First pixel coordinates, as FITS counts.</param>
    /// <param name="y">Second pixel coordinates, as many.</param>
    /// <param name="rightAscensionDegrees">Receives right ascensions in degrees, 0 (included) to 360 (left out); NaN where it fails.</param>
    /// <param name="declinationDegrees">Receives declinations in degrees; NaN where it fails.</param>
    /// <param name="failures">Receives the reasons, <see cref="MapFailure.None"/> for each answer.</param>
    /// <returns>How many failed.</returns>
    /// <exception cref="ArgumentException">The spans are not of one length.</exception>
    /// <remarks>The places asked for and the answers may not share memory. Nothing is allocated.</remarks>
    public int PixelToSky(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        Span<double> rightAscensionDegrees,
        Span<double> declinationDegrees,
        Span<MapFailure> failures
    )
    {
        RequireOneLength(
            x.Length,
            y.Length,
            rightAscensionDegrees.Length,
            declinationDegrees.Length,
            failures.Length
        );
        return PointBatches.PixelToSky(
            this,
            x,
            y,
            rightAscensionDegrees,
            declinationDegrees,
            failures
        );
    }

    /// <summary>The places of many directions.</summary>
    /// <param name="rightAscensionDegrees">Right ascensions in degrees; whole turns do not matter.</param>
    /// <param name="declinationDegrees">Declinations in degrees, -90 to +90, as many.</param>
    /// <param name="x">Receives first pixel coordinates, as FITS counts; NaN where it fails.</param>
    /// <param name="y">Receives second pixel coordinates; NaN where it fails.</param>
    /// <param name="failures">Receives the reasons, <see cref="MapFailure.None"/> for each answer.</param>
    /// <returns>How many failed.</returns>
    /// <exception cref="ArgumentException">The spans are not of one length.</exception>
    /// <remarks>
    /// A declination beyond a pole, or a number that is not finite, fails as <see cref="MapFailure.OffTheMap"/>. The
    /// directions asked for and the answers may not share memory. Nothing is allocated.
    /// </remarks>
    public int SkyToPixel(
        ReadOnlySpan<double> rightAscensionDegrees,
        ReadOnlySpan<double> declinationDegrees,
        Span<double> x,
        Span<double> y,
        Span<MapFailure> failures
    )
    {
        RequireOneLength(
            rightAscensionDegrees.Length,
            declinationDegrees.Length,
            x.Length,
            y.Length,
            failures.Length
        );
        return PointBatches.SkyToPixel(
            this,
            rightAscensionDegrees,
            declinationDegrees,
            x,
            y,
            failures
        );
    }

    /// <summary>Where in another picture the same sky appears, for many places.</summary>
    /// <param name="x">First pixel coordinates of this picture, as FITS counts.</param>
    /// <param name="y">Second pixel coordinates, as many.</param>
    /// <param name="other">The other picture's world coordinates.</param>
    /// <param name="otherX">Receives first pixel coordinates of the other picture; NaN where there is no such place.</param>
    /// <param name="otherY">Receives second pixel coordinates; NaN where there is none.</param>
    /// <returns>How many have none, for either reason.</returns>
    /// <exception cref="ArgumentException">The spans are not of one length.</exception>
    /// <remarks>The places asked for and the answers may not share memory. Nothing is allocated.</remarks>
    public int PixelToPixel(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        WorldCoordinates other,
        Span<double> otherX,
        Span<double> otherY
    )
    {
        ArgumentNullException.ThrowIfNull(other);
        RequireOneLength(x.Length, y.Length, otherX.Length, otherY.Length);
        return PointBatches.PixelToPixel(this, other, x, y, otherX, otherY);
    }

    /// <summary>The linear part at a place: degrees of sky east and north a pixel, north being that of the place.</summary>
    /// <param name="pixel">The place, as FITS counts.</param>
    /// <param name="matrix">Scale, position angle of the axes and parity there.</param>
    /// <returns>False where the place, or one half a pixel beside it, shows no direction.</returns>
    public virtual bool TryMatrixAt(PixelPosition pixel, out PixelMatrix matrix)
    {
        const double half = 0.5;
        if (
            !TryPixelToSky(pixel, out var here)
            || !TryPixelToSky(pixel with { X = pixel.X + half }, out var right)
            || !TryPixelToSky(pixel with { X = pixel.X - half }, out var left)
            || !TryPixelToSky(pixel with { Y = pixel.Y + half }, out var above)
            || !TryPixelToSky(pixel with { Y = pixel.Y - half }, out var below)
        )
        {
            matrix = default;
            return false;
        }

        var (alongX, alongY) = (right.Vector - left.Vector, above.Vector - below.Vector);
        matrix = InDegrees(here, alongX, alongY);
        return true;
    }

    /// <summary>The direction at the middle of a picture.</summary>
    /// <param name="width">Columns.</param>
    /// <param name="height">Rows.</param>
    /// <param name="centre">The direction; the default one when the answer is false.</param>
    /// <returns>False when the middle shows no direction.</returns>
    public bool TryCentre(int width, int height, out SkyDirection centre) =>
        TryPixelToSky(new((width + 1) / 2.0, (height + 1) / 2.0), out centre);

    /// <summary>The directions of a picture's outer corners.</summary>
    /// <param name="width">Columns.</param>
    /// <param name="height">Rows.</param>
    /// <param name="corners">
    /// Pixels (0.5, 0.5), (width + 0.5, 0.5), (width + 0.5, height + 0.5), (0.5, height + 0.5); empty when the answer is false.
    /// </param>
    /// <returns>False when a corner shows no direction, as in a map of the whole sky.</returns>
    public bool TryCorners(int width, int height, out IReadOnlyList<SkyDirection> corners)
    {
        var (right, top) = (width + 0.5, height + 0.5);
        var found = new SkyDirection[4];
        var all =
            TryPixelToSky(new(0.5, 0.5), out found[0])
            && TryPixelToSky(new(right, 0.5), out found[1])
            && TryPixelToSky(new(right, top), out found[2])
            && TryPixelToSky(new(0.5, top), out found[3]);
        corners = all ? found : [];
        return all;
    }

    /// <summary>
    /// From pixels to vectors of any length that point to what they show; NaN where that is in doubt, for the single call
    /// to say.
    /// </summary>
    /// <param name="x">First pixel coordinates; receives first components.</param>
    /// <param name="y">Second pixel coordinates; receives second components.</param>
    /// <param name="z">Receives third components.</param>
    internal virtual void PixelsToVectors(
        Span<Vector<double>> x,
        Span<Vector<double>> y,
        Span<Vector<double>> z
    )
    {
        var eachX = PointBatches.Singles(x);
        var eachY = PointBatches.Singles(y);
        var eachZ = PointBatches.Singles(z);
        for (var i = 0; i < eachX.Length; i++)
        {
            var found = TryPixelToSky(new(eachX[i], eachY[i]), out var direction);
            (eachX[i], eachY[i], eachZ[i]) = found
                ? (direction.Vector.X, direction.Vector.Y, direction.Vector.Z)
                : (double.NaN, double.NaN, double.NaN);
        }
    }

    /// <summary>From unit vectors to the pixels where they appear; NaN where that is in doubt, for the single call to say.</summary>
    /// <param name="x">First components; receives first pixel coordinates.</param>
    /// <param name="y">Second components; receives second pixel coordinates.</param>
    /// <param name="z">Third components; meaningless afterwards.</param>
    internal virtual void VectorsToPixels(
        Span<Vector<double>> x,
        Span<Vector<double>> y,
        Span<Vector<double>> z
    )
    {
        var eachX = PointBatches.Singles(x);
        var eachY = PointBatches.Singles(y);
        var eachZ = PointBatches.Singles(z);
        for (var i = 0; i < eachX.Length; i++)
        {
            var vector = new Vector3D(eachX[i], eachY[i], eachZ[i]);
            var pixel = default(PixelPosition);
            var found =
                double.IsFinite(vector.Length)
                && TrySkyToPixel(SkyDirection.FromVector(vector), out pixel);
            (eachX[i], eachY[i]) = found ? (pixel.X, pixel.Y) : (double.NaN, double.NaN);
        }
    }

    /// <summary>The matrix of two steps on the sky, each for one pixel.</summary>
    private protected static PixelMatrix InDegrees(
        SkyDirection here,
        Vector3D alongX,
        Vector3D alongY
    )
    {
        const double degrees = 180.0 / Math.PI;
        var (east, north) = (here.East, here.North);
        return new(
            degrees * alongX.Dot(east),
            degrees * alongY.Dot(east),
            degrees * alongX.Dot(north),
            degrees * alongY.Dot(north)
        );
    }

    private static void RequireOneLength(int first, params ReadOnlySpan<int> others)
    {
        foreach (var other in others)
        {
            if (other != first)
            {
                throw new ArgumentException(
                    FormattableString.Invariant(
                        $"A batch takes spans of one length; {first} and {other} were given."
                    ),
                    nameof(others)
                );
            }
        }
    }

    /// <summary>Refuses what no picture has: a matrix that cannot be turned back, a reference pixel that is no place.</summary>
    private protected static void Check(
        PixelPosition referencePixel,
        PixelMatrix matrix,
        [CallerArgumentExpression(nameof(matrix))] string? matrixName = null
    )
    {
        if (!matrix.IsUsable)
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"The CD matrix is singular or not finite: {matrix.Cd11} {matrix.Cd12} {matrix.Cd21} {matrix.Cd22}."
                ),
                matrixName
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
    }

    /// <summary>Where the reference pixel lies when pixels are joined.</summary>
    private protected PixelPosition ReferencePixelBinned(double factor) =>
        factor > 0.0 && double.IsFinite(factor)
            ? new(
                ((ReferencePixel.X - 0.5) / factor) + 0.5,
                ((ReferencePixel.Y - 0.5) / factor) + 0.5
            )
            : throw new ArgumentOutOfRangeException(
                nameof(factor),
                factor,
                "Pixels are joined by a finite factor of more than 0."
            );

    /// <summary>Where the reference pixel lies when the rows are stored in the opposite order.</summary>
    private protected PixelPosition ReferencePixelWithRowsReversed(int rows) =>
        ReferencePixel with
        {
            Y = rows + 1 - ReferencePixel.Y,
        };
}

using System.Numerics;

namespace Framing.Sky;

/// <summary>World coordinates of a picture in any projection, with or without distortion of its lens.</summary>
/// <remarks>
/// <para>
/// Pixel, distortion of pixels (SIP), CD matrix, distortion of the plane (TPV), projection, native sphere, sky: each step
/// has its own type. What an undistorted tangent plane needs is <see cref="TanWorldCoordinates"/>.
/// </para>
/// <para>Source: Calabretta and Greisen 2002, A&amp;A 395, 1077, section 2; SIP and TPV as their types say.</para>
/// </remarks>
public sealed class ProjectedWorldCoordinates : WorldCoordinates
{
    private readonly SkyProjection projection;
    private readonly PixelMatrix inverse;

    /// <summary>Makes world coordinates.</summary>
    /// <param name="referencePixel">CRPIX.</param>
    /// <param name="referenceDirection">CRVAL, as a direction.</param>
    /// <param name="plane">The CD matrix: degrees of the projection's plane a pixel; must be usable.</param>
    /// <param name="projection">The projection.</param>
    /// <param name="sphere">How its native sphere lies on the sky.</param>
    /// <param name="sip">The distortion of pixels; null for none.</param>
    /// <param name="tpv">The distortion of the plane; null for none.</param>
    /// <param name="origin">What is added to the plane's coordinates before the projection, degrees; 0, 0 unless PVi_0 moves the origin.</param>
    /// <exception cref="ArgumentException">The matrix is singular or not finite, or a place is none.</exception>
    public ProjectedWorldCoordinates(
        PixelPosition referencePixel,
        SkyDirection referenceDirection,
        PixelMatrix plane,
        SkyProjection projection,
        NativeSphere sphere,
        SipDistortion? sip = null,
        TpvDistortion? tpv = null,
        PlanePoint origin = default
    )
    {
        ArgumentNullException.ThrowIfNull(projection);
        Check(referencePixel, plane);

        if (referenceDirection.IsDefault || sphere == default)
        {
            throw new ArgumentException(
                "The reference needs a direction and a sphere.",
                nameof(sphere)
            );
        }

        ReferencePixel = referencePixel;
        ReferenceDirection = referenceDirection;
        PlaneMatrix = plane;
        this.projection = projection;
        Sphere = sphere;
        inverse = plane.Inverse();
        (Sip, Tpv, Origin) = (sip, tpv, origin);
        Matrix = TryMatrixAt(referencePixel, out var matrix) ? matrix : plane;
    }

    /// <inheritdoc/>
    public override string Projection => projection.Code;

    /// <inheritdoc/>
    public override PixelPosition ReferencePixel { get; }

    /// <inheritdoc/>
    public override SkyDirection ReferenceDirection { get; }

    /// <inheritdoc/>
    public override PixelMatrix Matrix { get; }

    /// <summary>The CD matrix as such: degrees of the projection's plane a pixel.</summary>
    public PixelMatrix PlaneMatrix { get; }

    /// <summary>The map projection.</summary>
    public SkyProjection MapProjection => projection;

    /// <summary>How the projection's native sphere lies on the sky.</summary>
    public NativeSphere Sphere { get; }

    /// <summary>The distortion of pixels; null where there is none.</summary>
    public SipDistortion? Sip { get; }

    /// <summary>The distortion of the plane; null where there is none.</summary>
    public TpvDistortion? Tpv { get; }

    /// <summary>What is added to the plane's coordinates before the projection, degrees: 0, 0 unless PVi_0 moves the origin.</summary>
    public PlanePoint Origin { get; }

    /// <summary>A tangent plane with distortion of its pixels: what a lens really draws.</summary>
    /// <param name="referencePixel">CRPIX: the tangent point, from which the distortion counts.</param>
    /// <param name="referenceDirection">CRVAL: the direction of the tangent point.</param>
    /// <param name="matrix">The CD matrix; must be usable.</param>
    /// <param name="sip">The distortion.</param>
    /// <returns>The world coordinates.</returns>
    /// <exception cref="ArgumentException">The matrix is singular or not finite, or a place is none.</exception>
    public static ProjectedWorldCoordinates TanSip(
        PixelPosition referencePixel,
        SkyDirection referenceDirection,
        PixelMatrix matrix,
        SipDistortion sip
    )
    {
        ArgumentNullException.ThrowIfNull(sip);
        return new(
            referencePixel,
            referenceDirection,
            matrix,
            new TangentProjection(),
            NativeSphere.About(referenceDirection),
            sip
        );
    }

    /// <inheritdoc/>
    public override MapFailure PixelToSky(PixelPosition pixel, out SkyDirection direction)
    {
        var (u, v) = (pixel.X - ReferencePixel.X, pixel.Y - ReferencePixel.Y);
        if (Sip is not null)
        {
            (u, v) = Sip.Apply(u, v);
        }

        var x = (PlaneMatrix.Cd11 * u) + (PlaneMatrix.Cd12 * v);
        var y = (PlaneMatrix.Cd21 * u) + (PlaneMatrix.Cd22 * v);
        if (Tpv is not null)
        {
            (x, y) = Tpv.Apply(x, y);
        }

        (x, y) = (x + Origin.Xi, y + Origin.Eta);
        direction = default;
        if (!double.IsFinite(x) || !double.IsFinite(y))
        {
            return MapFailure.OffTheMap;
        }

        var failure = projection.ToSphere(x, y, out var native);
        if (failure == MapFailure.None)
        {
            direction = Sphere.ToSky(native);
        }

        return failure;
    }

    /// <inheritdoc/>
    public override MapFailure SkyToPixel(SkyDirection direction, out PixelPosition pixel)
    {
        pixel = default;
        var failure = projection.ToPlane(Sphere.ToNative(direction), out var x, out var y);
        if (failure != MapFailure.None)
        {
            return failure;
        }

        (x, y) = (x - Origin.Xi, y - Origin.Eta);
        if (Tpv is not null)
        {
            failure = Tpv.Undo(x, y, out var undistorted);
            (x, y) = (undistorted.Xi, undistorted.Eta);
        }

        var u = (inverse.Cd11 * x) + (inverse.Cd12 * y);
        var v = (inverse.Cd21 * x) + (inverse.Cd22 * y);
        if (Sip is not null && failure == MapFailure.None)
        {
            failure = Sip.Undo(u, v, out var undistorted);
            (u, v) = (undistorted.Xi, undistorted.Eta);
        }

        pixel = new(ReferencePixel.X + u, ReferencePixel.Y + v);
        return failure;
    }

    /// <inheritdoc/>
    internal override void PixelsToVectors(
        Span<Vector<double>> x,
        Span<Vector<double>> y,
        Span<Vector<double>> z
    )
    {
        var from = new PlanePoint(ReferencePixel.X, ReferencePixel.Y);
        if (Sip is not null)
        {
            PlaneLanes.Shift(from * -1.0, x, y);
            Sip.Apply(x, y);
            from = default;
        }

        PlaneLanes.Apply(PlaneMatrix, from, Tpv is null ? Origin : default, x, y);
        if (Tpv is not null)
        {
            Tpv.Apply(x, y);
            PlaneLanes.Shift(Origin, x, y);
        }

        projection.ToSphere(x, y, z);
        SphereLanes.Combine(Sphere.X, Sphere.Y, Sphere.Z, x, y, z);
    }

    /// <inheritdoc/>
    internal override void VectorsToPixels(
        Span<Vector<double>> x,
        Span<Vector<double>> y,
        Span<Vector<double>> z
    )
    {
        SphereLanes.Products(Sphere.X, Sphere.Y, Sphere.Z, x, y, z);
        projection.ToPlane(x, y, z);
        var from = Origin;
        if (Tpv is not null)
        {
            PlaneLanes.Shift(Origin * -1.0, x, y);
            Tpv.Undo(x, y);
            from = default;
        }

        var to = new PlanePoint(ReferencePixel.X, ReferencePixel.Y);
        PlaneLanes.Apply(inverse, from, Sip is null ? to : default, x, y);
        if (Sip is not null)
        {
            Sip.Undo(x, y);
            PlaneLanes.Shift(to, x, y);
        }
    }

    /// <inheritdoc/>
    public override ProjectedWorldCoordinates WithRowsReversed(int rows) =>
        With(
            ReferencePixelWithRowsReversed(rows),
            PlaneMatrix.WithRowsReversed(),
            Sip?.Scaled(1.0, -1.0)
        );

    /// <inheritdoc/>
    public override ProjectedWorldCoordinates Binned(double factor) =>
        With(ReferencePixelBinned(factor), PlaneMatrix.Binned(factor), Sip?.Scaled(factor, factor));

    /// <inheritdoc/>
    public override ProjectedWorldCoordinates Cropped(int columns, int rows) =>
        With(new(ReferencePixel.X - columns, ReferencePixel.Y - rows), PlaneMatrix, Sip);

    /// <summary>The same picture in another frame of the sky.</summary>
    /// <param name="carry">Carries directions to that frame; a turn of the whole sky.</param>
    /// <returns>The world coordinates in the other frame.</returns>
    public ProjectedWorldCoordinates Carried(Func<SkyDirection, SkyDirection> carry)
    {
        ArgumentNullException.ThrowIfNull(carry);
        return new(
            ReferencePixel,
            carry(ReferenceDirection),
            PlaneMatrix,
            projection,
            Sphere.Carried(carry),
            Sip,
            Tpv,
            Origin
        );
    }

    private ProjectedWorldCoordinates With(
        PixelPosition referencePixel,
        PixelMatrix matrix,
        SipDistortion? sip
    ) => new(referencePixel, ReferenceDirection, matrix, projection, Sphere, sip, Tpv, Origin);
}

namespace Framing.Sky;

/// <summary>
/// The gnomonic projection about one direction: great circles become straight lines, and a camera's picture is a flat
/// rectangle.
/// </summary>
/// <remarks>
/// <para>Only the half of the sky in front of the plane has an image: see <see cref="TryProject"/>.</para>
/// <para>Source: Calabretta and Greisen 2002, A&amp;A 395, 1077, section 5.1.3 (TAN), in vector form.</para>
/// </remarks>
public sealed class TangentPlane
{
    /// <summary>Cosines below this are rounding of a right angle.</summary>
    private const double LeastCosine = 1e-15;

    private readonly Vector3D centre;

    /// <summary>Makes the plane that touches the sky at a direction.</summary>
    /// <param name="centre">The tangent point; at a pole its east and north are those of its right ascension.</param>
    /// <exception cref="ArgumentException">The direction is the default one, which points nowhere.</exception>
    public TangentPlane(SkyDirection centre)
    {
        if (centre.IsDefault)
        {
            throw new ArgumentException(
                "A tangent plane needs a direction that points somewhere.",
                nameof(centre)
            );
        }

        Centre = centre;
        this.centre = centre.Vector;
        East = centre.East;
        North = centre.North;
    }

    /// <summary>The tangent point.</summary>
    public SkyDirection Centre { get; }

    /// <summary>The unit vector of growing ξ.</summary>
    internal Vector3D East { get; }

    /// <summary>The unit vector of growing η.</summary>
    internal Vector3D North { get; }

    /// <summary>Projects a direction onto the plane.</summary>
    /// <param name="direction">Any direction.</param>
    /// <param name="point">Its standard coordinates; meaningless when the answer is false.</param>
    /// <returns>False when the direction lies 90° or more from the centre: behind the plane it has no image.</returns>
    public bool TryProject(SkyDirection direction, out PlanePoint point)
    {
        var v = direction.Vector;
        var cosine = v.Dot(centre);
        if (!(cosine > LeastCosine))
        {
            point = default;
            return false;
        }

        point = new(v.Dot(East) / cosine, v.Dot(North) / cosine);
        return true;
    }

    /// <summary>Projects a direction that is known to lie in front of the plane.</summary>
    /// <param name="direction">A direction less than 90° from the centre.</param>
    /// <returns>Its standard coordinates.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The direction lies behind the plane.</exception>
    public PlanePoint Project(SkyDirection direction) =>
        TryProject(direction, out var point)
            ? point
            : throw new ArgumentOutOfRangeException(
                nameof(direction),
                direction,
                FormattableString.Invariant(
                    $"The direction lies {direction.SeparationTo(Centre).Degrees:0.0} degrees from the centre of the plane; only less than 90 can be projected."
                )
            );

    /// <summary>The direction on the sky that a point of the plane shows.</summary>
    /// <param name="point">Standard coordinates, finite.</param>
    /// <returns>The direction.</returns>
    public SkyDirection Unproject(PlanePoint point) =>
        SkyDirection.FromVector(centre + (East * point.Xi) + (North * point.Eta));
}

namespace Framing.Sky;

/// <summary>A closed figure on the sky whose sides are great-circle arcs, smaller than half the sky.</summary>
/// <remarks>
/// <para>
/// Of the two regions that a closed line makes, the smaller is meant, whichever way the corners run. The figure has to
/// lie within 90° of its middle; every camera frame, outline and mosaic patch does.
/// </para>
/// <para>The poles and right ascension 0h need no care: all work is done on vectors.</para>
/// </remarks>
public sealed class SkyPolygon
{
    private readonly Vector3D[] corners;
    private readonly double signedSteradians;

    /// <summary>Makes a polygon from its corners in order.</summary>
    /// <param name="corners">Three or more directions; the first is not repeated at the end.</param>
    /// <exception cref="ArgumentException">
    /// Fewer than three corners, a default direction among them, or corners that do not lie within 90° of their middle.
    /// </exception>
    public SkyPolygon(IReadOnlyList<SkyDirection> corners)
    {
        ArgumentNullException.ThrowIfNull(corners);
        if (corners.Count < 3)
        {
            throw new ArgumentException(
                $"A polygon has three or more corners, not {corners.Count}.",
                nameof(corners)
            );
        }

        if (corners.Any(corner => corner.IsDefault))
        {
            throw new ArgumentException(
                "A corner of a polygon is a default direction, which points nowhere.",
                nameof(corners)
            );
        }

        Corners = [.. corners];
        this.corners = [.. corners.Select(corner => corner.Vector)];
        var mean = MeanOf(this.corners);
        var radius = RadiusAbout(mean, Corners);
        signedSteradians = SignedExcess(this.corners, mean.Vector);
        Middle = CentreOfArea(this.corners, signedSteradians, mean, radius) ?? mean;
        Radius = RadiusAbout(Middle, Corners);
        if (Radius.Radians >= Math.PI / 2.0)
        {
            // The areas of a line that crosses itself nearly cancel, and their centre lies anywhere.
            (Middle, Radius) = (mean, radius);
        }

        if (Radius.Radians >= Math.PI / 2.0)
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"A polygon lies within 90 degrees of its middle; a corner stands {Radius.Degrees:0.0} degrees away."
                ),
                nameof(corners)
            );
        }
    }

    /// <summary>The corners in order; the last joins the first.</summary>
    public IReadOnlyList<SkyDirection> Corners { get; }

    /// <summary>The area. Of a line that crosses itself, loops that run the other way count against the rest.</summary>
    public SolidAngle Area => SolidAngle.FromSteradians(Math.Abs(signedSteradians));

    /// <summary>
    /// The area with the sign of the way the corners run: positive when they run counter-clockwise as seen from outside
    /// the sphere, which is clockwise for an observer looking up (north up, east left).
    /// </summary>
    public SolidAngle SignedArea => SolidAngle.FromSteradians(signedSteradians);

    /// <summary>The centre of area; for a figure without area the mean of its corners.</summary>
    public SkyDirection Middle { get; }

    /// <summary>The distance of the farthest corner from the middle.</summary>
    public Angle Radius { get; }

    /// <summary>True when a direction lies inside. On the border either answer may come.</summary>
    /// <param name="direction">Any direction.</param>
    /// <returns>True inside, false outside.</returns>
    /// <remarks>
    /// The sum of the turns from corner to corner as seen from the direction: a full turn inside, none outside. Corners
    /// that cross themselves count by winding number (non-zero).
    /// </remarks>
    public bool Contains(SkyDirection direction)
    {
        var p = direction.Vector;

        // A quick filter: the figure lies within its radius of its middle. It also keeps the antipode out, from which the
        // line is seen to wind just the same.
        if (p.Dot(Middle.Vector) <= Math.Cos(Radius.Radians) - 1e-15)
        {
            return false;
        }

        var turn = 0.0;
        for (int i = 0, j = corners.Length - 1; i < corners.Length; j = i++)
        {
            // The corners' parts at right angles to p, from differences: good for figures of an arcsecond, too.
            var a = corners[j] - p;
            var b = corners[i] - p;
            turn += Math.Atan2(p.Dot(a.Cross(b)), a.Cross(p).Dot(b.Cross(p)));
        }

        return Math.Abs(turn) > Math.PI;
    }

    /// <summary>Spherical excess with its sign, summed over triangles at the mean of the corners.</summary>
    /// <remarks>
    /// Van Oosterom and Strackee 1983, IEEE Trans. Biomed. Eng. 30, 125: 2 atan2(a·(b×c), 1 + a·b + b·c + c·a). The triple
    /// product is taken of differences, so that a figure of an arcsecond keeps ten digits.
    /// </remarks>
    private static double SignedExcess(Vector3D[] corners, Vector3D apex)
    {
        var excess = 0.0;
        for (int i = 0, j = corners.Length - 1; i < corners.Length; j = i++)
        {
            var b = corners[j];
            var c = corners[i];
            excess +=
                2.0
                * Math.Atan2(
                    apex.Dot((b - apex).Cross(c - apex)),
                    1.0 + apex.Dot(b) + b.Dot(c) + c.Dot(apex)
                );
        }

        return excess;
    }

    /// <summary>The direction of the corners' mean: it lies in every hemisphere that holds all of them.</summary>
    private static SkyDirection MeanOf(Vector3D[] corners)
    {
        var mean = corners.Aggregate((sum, corner) => sum + corner);
        return mean.Length > 1e-9
            ? SkyDirection.FromVector(mean)
            : throw new ArgumentException(
                "The corners of a polygon must not be spread over the whole sky.",
                nameof(corners)
            );
    }

    private static Angle RadiusAbout(SkyDirection middle, IReadOnlyList<SkyDirection> corners) =>
        corners.Select(corner => corner.SeparationTo(middle)).Aggregate(Angle.Max);

    /// <summary>The centre of area; null where the figure has no area to speak of.</summary>
    private static SkyDirection? CentreOfArea(
        Vector3D[] corners,
        double signedExcess,
        SkyDirection mean,
        Angle radius
    )
    {
        // On a small figure the sum over its sides cancels to rounding noise; there the plane is exact enough (a figure of
        // radius r is off by less than r cubed, 1e-10 rad here).
        if (radius.Radians < 5e-4)
        {
            return CentreOfFlatArea(corners, mean, radius);
        }

        if (Math.Abs(signedExcess) < 1e-12)
        {
            return null;
        }

        // The vector area of the figure: half the sum of each side's length along its normal (exact on the sphere).
        var area = default(Vector3D);
        for (int i = 0, j = corners.Length - 1; i < corners.Length; j = i++)
        {
            var normal = corners[j].Cross(corners[i]);
            var sin = normal.Length;
            if (sin > 0.0)
            {
                area += normal * (Math.Atan2(sin, corners[j].Dot(corners[i])) / (2.0 * sin));
            }
        }

        return SkyDirection.FromVector(area * Math.Sign(signedExcess));
    }

    private static SkyDirection? CentreOfFlatArea(
        Vector3D[] corners,
        SkyDirection mean,
        Angle radius
    )
    {
        var plane = new TangentPlane(mean);
        var points = corners
            .Select(corner => plane.Project(SkyDirection.FromVector(corner)))
            .ToArray();
        var twice = 0.0;
        var moment = default(PlanePoint);
        for (int i = 0, j = points.Length - 1; i < points.Length; j = i++)
        {
            var cross = (points[j].Xi * points[i].Eta) - (points[i].Xi * points[j].Eta);
            twice += cross;
            moment += (points[j] + points[i]) * cross;
        }

        return Math.Abs(twice) > 1e-9 * radius.Radians * radius.Radians
            ? plane.Unproject(moment * (1.0 / (3.0 * twice)))
            : null;
    }
}

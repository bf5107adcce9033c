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
    /// <exception cref="ArgumentException">Fewer than three corners, or corners that do not lie within 90° of their middle.</exception>
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

        Corners = [.. corners];
        this.corners = [.. corners.Select(corner => corner.Vector)];
        signedSteradians = SignedExcess(this.corners);
        Middle = FindMiddle(this.corners, signedSteradians);
        Radius = Corners.Select(corner => corner.SeparationTo(Middle)).Aggregate(Angle.Max);
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

    /// <summary>The area.</summary>
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

        // The figure lies in front of its middle; seen from the antipode the line winds just the same.
        if (p.Dot(Middle.Vector) <= Math.Cos(Radius.Radians) - 1e-15)
        {
            return false;
        }

        var turn = 0.0;
        for (int i = 0, j = corners.Length - 1; i < corners.Length; j = i++)
        {
            var a = corners[j];
            var b = corners[i];
            turn += Math.Atan2(p.Dot(a.Cross(b)), a.Dot(b) - (p.Dot(a) * p.Dot(b)));
        }

        return Math.Abs(turn) > Math.PI;
    }

    /// <summary>Spherical excess with its sign, summed over triangles at the first corner.</summary>
    /// <remarks>Van Oosterom and Strackee 1983, IEEE Trans. Biomed. Eng. 30, 125: 2 atan2(a·(b×c), 1 + a·b + b·c + c·a).</remarks>
    private static double SignedExcess(Vector3D[] corners)
    {
        // Fans from the mean of the corners keep every triangle small, so that none is larger than half the sky.
        var mean = corners.Aggregate((sum, corner) => sum + corner);
        var apex = mean.Length > 1e-9 ? mean * (1.0 / mean.Length) : corners[0];
        var excess = 0.0;
        for (int i = 0, j = corners.Length - 1; i < corners.Length; j = i++)
        {
            var b = corners[j];
            var c = corners[i];
            excess +=
                2.0 * Math.Atan2(apex.Dot(b.Cross(c)), 1.0 + apex.Dot(b) + b.Dot(c) + c.Dot(apex));
        }

        return excess;
    }

    private static SkyDirection FindMiddle(Vector3D[] corners, double signedExcess)
    {
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

        // Below about 1e-14 sr the vector is rounding noise: a line or a point.
        if (Math.Abs(signedExcess) > 1e-14)
        {
            return SkyDirection.FromVector(area * Math.Sign(signedExcess));
        }

        var mean = corners.Aggregate((sum, corner) => sum + corner);
        return mean.Length > 1e-9
            ? SkyDirection.FromVector(mean)
            : throw new ArgumentException(
                "The corners of a polygon must not be spread over the whole sky.",
                nameof(corners)
            );
    }
}

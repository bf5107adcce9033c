using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>What is to be photographed: one or more areas on the sky that belong together.</summary>
/// <remarks>Areas may overlap; each counts once where they do.</remarks>
public sealed class SkyOutline
{
    /// <summary>Sides of the polygon that stands for an ellipse.</summary>
    private const int EllipseSides = 96;

    /// <summary>Makes an outline from its areas.</summary>
    /// <param name="areas">One or more polygons.</param>
    /// <exception cref="ArgumentException">No area is given, or they do not lie within 90° of their common middle.</exception>
    public SkyOutline(IReadOnlyList<SkyPolygon> areas)
    {
        ArgumentNullException.ThrowIfNull(areas);
        if (areas.Count == 0)
        {
            throw new ArgumentException("An outline needs at least one area.", nameof(areas));
        }

        Areas = [.. areas];
        Corners = [.. areas.SelectMany(area => area.Corners)];
        Middle = FindMiddle(Areas);
        Radius = Corners.Select(corner => corner.SeparationTo(Middle)).Aggregate(Angle.Max);
        if (Radius.Radians >= Math.PI / 2.0)
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"An outline lies within 90 degrees of its middle; a corner stands {Radius.Degrees:0.0} degrees away."
                ),
                nameof(areas)
            );
        }
    }

    /// <summary>The areas.</summary>
    public IReadOnlyList<SkyPolygon> Areas { get; }

    /// <summary>The corners of all areas: a frame that holds them holds the outline.</summary>
    public IReadOnlyList<SkyDirection> Corners { get; }

    /// <summary>A middle to start from: the mean of the areas' middles, weighted by their size.</summary>
    public SkyDirection Middle { get; }

    /// <summary>The distance of the farthest corner from the middle.</summary>
    public Angle Radius { get; }

    /// <summary>An ellipse, or a circle, on the sky.</summary>
    /// <param name="centre">Its middle.</param>
    /// <param name="major">The full long axis, more than 0 and less than 120°.</param>
    /// <param name="minor">The full short axis, more than 0.</param>
    /// <param name="alongMajor">Position angle of the long axis; of no matter for a circle.</param>
    /// <returns>A polygon drawn around the ellipse, so that what holds the polygon holds the ellipse.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An axis is out of its range.</exception>
    public static SkyOutline Ellipse(
        SkyDirection centre,
        Angle major,
        Angle minor,
        PositionAngle alongMajor
    )
    {
        // A regular polygon around a circle stands out by 1/cos(pi/n) at its corners; sides, not corners, lie on the axes,
        // so that the polygon is just as long and as broad as the ellipse.
        var outward = 1.0 / Math.Cos(Math.PI / EllipseSides);
        var a = HalfTangent(major, nameof(major)) * outward;
        var b = HalfTangent(minor, nameof(minor)) * outward;
        var (sin, cos) = Math.SinCos(alongMajor.Radians);
        var plane = new TangentPlane(centre);
        var corners = new SkyDirection[EllipseSides];
        for (var i = 0; i < EllipseSides; i++)
        {
            var (s, c) = Math.SinCos(Math.Tau * (i + 0.5) / EllipseSides);
            corners[i] = plane.Unproject(
                new((a * c * sin) + (b * s * cos), (a * c * cos) - (b * s * sin))
            );
        }

        return new([new SkyPolygon(corners)]);
    }

    /// <summary>A rectangle on the sky.</summary>
    /// <param name="centre">Its middle.</param>
    /// <param name="along">The full length along the given position angle, more than 0 and less than 120°.</param>
    /// <param name="across">The full length across, more than 0 and less than 120°.</param>
    /// <param name="direction">Position angle of the side called <paramref name="along"/>.</param>
    /// <returns>The rectangle.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A side is out of its range.</exception>
    public static SkyOutline Rectangle(
        SkyDirection centre,
        Angle along,
        Angle across,
        PositionAngle direction
    )
    {
        var field = new FieldShape(
            2.0 * HalfTangent(across, nameof(across)),
            2.0 * HalfTangent(along, nameof(along))
        );
        return new([
            new SkyPolygon(field.Corners(new CameraPose(centre, direction), mirrored: false)),
        ]);
    }

    /// <summary>Several outlines as one target.</summary>
    /// <param name="outlines">One or more outlines.</param>
    /// <returns>An outline with the areas of all.</returns>
    public static SkyOutline Together(IEnumerable<SkyOutline> outlines) =>
        new([.. outlines.SelectMany(outline => outline.Areas)]);

    private static double HalfTangent(Angle size, string name) =>
        size.Degrees is > 0.0 and < 120.0
            ? Math.Tan(size.Radians / 2.0)
            : throw new ArgumentOutOfRangeException(
                name,
                size.Degrees,
                "A size on the sky is more than 0 and less than 120 degrees."
            );

    private static SkyDirection FindMiddle(IReadOnlyList<SkyPolygon> areas)
    {
        var sum = default(Vector3D);
        foreach (var area in areas)
        {
            sum += area.Middle.Vector * (area.Area.Steradians + 1e-12);
        }

        return SkyDirection.FromVector(sum);
    }
}

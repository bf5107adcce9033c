using Framing.Sky;

namespace Framing.Drawing;

/// <summary>Which part of the sky a chart shows, and how it is turned.</summary>
/// <remarks>
/// The chart is the tangent plane at its centre (gnomonic), the projection of a camera: panels have straight sides. Its
/// scale grows outwards as 1/cos² of the distance; a field of more than 100° is refused, for beyond it the rim would be
/// drawn more than twice as large as the middle.
/// </remarks>
public sealed record ChartView
{
    /// <summary>The widest field in degrees, along either side.</summary>
    public const double WidestDegrees = 100.0;

    /// <summary>The narrowest field in degrees, along either side.</summary>
    public const double NarrowestDegrees = 1.0 / 60.0;

    /// <summary>Makes a view.</summary>
    /// <param name="centre">The middle of the chart.</param>
    /// <param name="width">The angle that the chart shows at least from left to right, 1′ to 100°.</param>
    /// <param name="height">The angle that the chart shows at least from bottom to top, 1′ to 100°.</param>
    /// <param name="up">Position angle of the chart's up direction at its centre; north for north up.</param>
    /// <param name="mirrored">True for a chart that runs as a mirrored camera picture does; else east is left of north.</param>
    /// <exception cref="ArgumentOutOfRangeException">A side is out of its range, or the centre is no direction.</exception>
    public ChartView(
        SkyDirection centre,
        Angle width,
        Angle height,
        PositionAngle up = default,
        bool mirrored = false
    )
    {
        if (centre.IsDefault)
        {
            throw new ArgumentOutOfRangeException(
                nameof(centre),
                "The centre of a chart needs a direction."
            );
        }

        Centre = centre;
        Width = InRange(width, nameof(width));
        Height = InRange(height, nameof(height));
        Up = up;
        Mirrored = mirrored;
    }

    /// <summary>The middle of the chart.</summary>
    public SkyDirection Centre { get; }

    /// <summary>The angle shown at least from left to right, through the centre.</summary>
    public Angle Width { get; }

    /// <summary>The angle shown at least from bottom to top, through the centre.</summary>
    public Angle Height { get; }

    /// <summary>Position angle of the chart's up direction at its centre.</summary>
    public PositionAngle Up { get; }

    /// <summary>True for a chart that runs as a mirrored camera picture does.</summary>
    public bool Mirrored { get; }

    /// <summary>The smallest view that holds all given directions with a rim around them.</summary>
    /// <param name="shown">One or more directions, within 45° of their mean.</param>
    /// <param name="up">Position angle of the chart's up direction at its centre.</param>
    /// <param name="mirrored">True for a chart that runs as a mirrored camera picture does.</param>
    /// <param name="rim">The rim on every side as a part of the larger side of what is shown, 0 to 2.</param>
    /// <param name="narrowest">The least that each side of the chart spans; by default half a degree.</param>
    /// <returns>The view; sides that would span more than 100° are cut to that.</returns>
    /// <exception cref="ArgumentException">No direction is given, or they are spread too wide for one plane.</exception>
    public static ChartView Around(
        IReadOnlyCollection<SkyDirection> shown,
        PositionAngle up = default,
        bool mirrored = false,
        double rim = 0.1,
        Angle? narrowest = null
    )
    {
        ArgumentNullException.ThrowIfNull(shown);
        ArgumentOutOfRangeException.ThrowIfNegative(rim);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(rim, 2.0);
        if (shown.Count == 0)
        {
            throw new ArgumentException("A chart needs something to show.", nameof(shown));
        }

        var sum = default(Vector3D);
        foreach (var direction in shown)
        {
            sum += direction.Vector;
        }

        var centre = SkyDirection.FromVector(sum);

        // The middle of the bounding rectangle is found in the plane of the last middle: three rounds settle it far below a pixel.
        var (halfWidth, halfHeight) = (0.0, 0.0);
        for (var round = 0; round < 3; round++)
        {
            var plane = new TangentPlane(centre);
            var (sin, cos) = Math.SinCos(up.Radians);
            var (left, right, bottom, top) = (
                double.MaxValue,
                double.MinValue,
                double.MaxValue,
                double.MinValue
            );
            foreach (var direction in shown)
            {
                if (!plane.TryProject(direction, out var point))
                {
                    throw new ArgumentException(
                        "The directions to show are spread too wide for one chart.",
                        nameof(shown)
                    );
                }

                var x = (point.Xi * cos) - (point.Eta * sin);
                var y = (point.Xi * sin) + (point.Eta * cos);
                (left, right) = (Math.Min(left, x), Math.Max(right, x));
                (bottom, top) = (Math.Min(bottom, y), Math.Max(top, y));
            }

            var (middleX, middleY) = ((left + right) / 2.0, (bottom + top) / 2.0);
            (halfWidth, halfHeight) = ((right - left) / 2.0, (top - bottom) / 2.0);
            centre = plane.Unproject(
                new((middleX * cos) + (middleY * sin), (middleY * cos) - (middleX * sin))
            );
        }

        var border = 2.0 * rim * Math.Max(halfWidth, halfHeight);
        var least = narrowest ?? Angle.FromDegrees(0.5);
        return new(
            centre,
            Side(halfWidth + border, least),
            Side(halfHeight + border, least),
            up,
            mirrored
        );
    }

    private static Angle Side(double halfTangent, Angle least)
    {
        var angle = Angle.Max(Angle.FromRadians(2.0 * Math.Atan(halfTangent)), least);
        return Angle.Min(angle, Angle.FromDegrees(WidestDegrees));
    }

    private static Angle InRange(Angle side, string name) =>
        side.Degrees is >= NarrowestDegrees - 1e-9 and <= WidestDegrees + 1e-9
            ? side
            : throw new ArgumentOutOfRangeException(
                name,
                side.Degrees,
                "A chart shows 1 minute of arc to 100 degrees along each side."
            );
}

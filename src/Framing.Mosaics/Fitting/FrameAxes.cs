using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>Three unit vectors of a frame on the sky: along its width, its height, and where it looks.</summary>
/// <remarks>
/// Width and height are those of an unmirrored picture turned by half a turn or not: seen from the centre, <c>X</c> is a
/// quarter turn from <c>Y</c> through the plane's +xi, +eta sense, so <c>X</c> points east when <c>Y</c> points north.
/// </remarks>
internal readonly record struct FrameAxes(Vector3D X, Vector3D Y, Vector3D Z)
{
    /// <summary>
    /// Nearer to a pole than this, in radians, right ascension is rounding: a frame there looks at the pole itself, so that
    /// its position angle counts from right ascension 0h and the same angle finds it again.
    /// </summary>
    private const double AtPole = 1e-12;

    public SkyDirection Centre =>
        double.Hypot(Z.X, Z.Y) > AtPole ? SkyDirection.FromVector(Z)
        : Z.Z > 0.0 ? SkyDirection.NorthPole
        : SkyDirection.SouthPole;

    /// <summary>Position angle of the height.</summary>
    public PositionAngle Up
    {
        get
        {
            var centre = Centre;
            return PositionAngle.FromAngle(
                Angle.FromRadians(Math.Atan2(Y.Dot(centre.East), Y.Dot(centre.North)))
            );
        }
    }

    /// <summary>A frame that looks at a direction with its height at a position angle.</summary>
    public static FrameAxes At(SkyDirection centre, PositionAngle up)
    {
        var (sin, cos) = Math.SinCos(up.Radians);
        var (east, north) = (centre.East, centre.North);
        return new((east * cos) - (north * sin), (east * sin) + (north * cos), centre.Vector);
    }

    /// <summary>This frame moved within its own plane without turning, then turned from X towards Y.</summary>
    public FrameAxes Moved(double alongX, double alongY, double turn)
    {
        var to = (Z + (X * alongX) + (Y * alongY)).Unit();

        // Parallel transport along the great circle from Z to the new place.
        var sum = (Z + to) * (1.0 / (1.0 + Z.Dot(to)));
        var x = X - (sum * X.Dot(to));
        var y = Y - (sum * Y.Dot(to));
        var (sin, cos) = Math.SinCos(turn);
        var turned = ((x * cos) + (y * sin)).Unit();

        // The cross product keeps the three at right angles over any number of moves.
        var up = to.Cross(turned).Unit();
        return new(up.Cross(to), up, to);
    }
}

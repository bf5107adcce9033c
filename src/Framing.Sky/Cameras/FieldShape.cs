namespace Framing.Sky;

/// <summary>
/// The rectangle that a camera sees, as tangents in the plane that touches the sky at the middle of the picture.
/// </summary>
/// <param name="TangentWidth">Sensor width divided by focal length: 2 tan(W/2) of the angle W between the edges.</param>
/// <param name="TangentHeight">Sensor height divided by focal length: 2 tan(H/2).</param>
/// <remarks>
/// Angles between edges do not add up across frames; tangents in one plane do. Two frames side by side fit at a step of
/// one <see cref="TangentWidth"/>.
/// </remarks>
public readonly record struct FieldShape(double TangentWidth, double TangentHeight)
{
    /// <summary>The angle from the middle of the left edge to the middle of the right edge.</summary>
    public Angle Width => Angle.FromRadians(2.0 * Math.Atan(TangentWidth / 2.0));

    /// <summary>The angle from the middle of the lower edge to the middle of the upper edge.</summary>
    public Angle Height => Angle.FromRadians(2.0 * Math.Atan(TangentHeight / 2.0));

    /// <summary>The angle from corner to opposite corner.</summary>
    public Angle Diagonal =>
        Angle.FromRadians(2.0 * Math.Atan(double.Hypot(TangentWidth, TangentHeight) / 2.0));

    /// <summary>The exact area on the sky.</summary>
    /// <remarks>4 asin(sin(W/2) sin(H/2)), with W and H the angles between the edges.</remarks>
    public SolidAngle Area
    {
        get
        {
            var sinW = Math.Sin(Math.Atan(TangentWidth / 2.0));
            var sinH = Math.Sin(Math.Atan(TangentHeight / 2.0));
            return SolidAngle.FromSteradians(4.0 * Math.Asin(sinW * sinH));
        }
    }

    /// <summary>The four corners on the sky for a camera at a pose, as displayed.</summary>
    /// <param name="pose">Where the camera looks and how it is turned.</param>
    /// <param name="mirrored">True when the displayed picture is mirrored (an odd number of mirrors).</param>
    /// <returns>The outer corners: top-left, top-right, bottom-right, bottom-left.</returns>
    public IReadOnlyList<SkyDirection> Corners(CameraPose pose, bool mirrored)
    {
        var plane = new TangentPlane(pose.Centre);
        var (sin, cos) = Math.SinCos(pose.PositionAngle.Radians);
        var up = new PlanePoint(sin, cos) * (TangentHeight / 2.0);

        // Seen unmirrored, right is a quarter turn clockwise from up on a sky with east to the left: position angle - 90°.
        var right = new PlanePoint(-cos, sin) * (TangentWidth / 2.0 * (mirrored ? -1.0 : 1.0));
        return
        [
            plane.Unproject(up - right),
            plane.Unproject(up + right),
            plane.Unproject(right - up),
            plane.Unproject((up + right) * -1.0),
        ];
    }
}

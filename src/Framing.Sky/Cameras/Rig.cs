namespace Framing.Sky;

/// <summary>A lens or telescope with a camera behind it.</summary>
public sealed record Rig
{
    /// <summary>Makes a rig.</summary>
    /// <param name="focalLengthMillimetres">Effective focal length in mm, reducer included, more than 0, at most 100,000.</param>
    /// <param name="sensor">The sensor, unbinned.</param>
    /// <param name="binning">Pixels joined along each axis, 1 to 16; left-over columns and rows are not used.</param>
    /// <param name="mirrored">True when the light path has an odd number of mirrors.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public Rig(double focalLengthMillimetres, Sensor sensor, int binning = 1, bool mirrored = false)
    {
        ArgumentNullException.ThrowIfNull(sensor);
        if (!(focalLengthMillimetres is > 0.0 and <= 100_000.0))
        {
            throw new ArgumentOutOfRangeException(
                nameof(focalLengthMillimetres),
                focalLengthMillimetres,
                "A focal length is more than 0 and at most 100000 mm."
            );
        }

        if (binning is < 1 or > 16 || binning > Math.Min(sensor.WidthPx, sensor.HeightPx))
        {
            throw new ArgumentOutOfRangeException(
                nameof(binning),
                binning,
                "Binning joins 1 to 16 pixels along each axis, and not more than the sensor has."
            );
        }

        FocalLengthMillimetres = focalLengthMillimetres;
        Sensor = sensor;
        Binning = binning;
        Mirrored = mirrored;
    }

    /// <summary>Effective focal length in mm.</summary>
    public double FocalLengthMillimetres { get; }

    /// <summary>The sensor, unbinned.</summary>
    public Sensor Sensor { get; }

    /// <summary>Pixels joined along each axis.</summary>
    public int Binning { get; }

    /// <summary>True when the light path has an odd number of mirrors, so that the displayed picture is mirrored.</summary>
    public bool Mirrored { get; }

    /// <summary>Columns of a frame as written: whole binned pixels.</summary>
    public int FrameWidthPx => Sensor.WidthPx / Binning;

    /// <summary>Rows of a frame as written: whole binned pixels.</summary>
    public int FrameHeightPx => Sensor.HeightPx / Binning;

    /// <summary>The sky that one (binned) pixel spans at the middle of the picture.</summary>
    public Angle Scale => Angle.FromRadians(TangentPerPixel);

    /// <summary>What the camera sees.</summary>
    public FieldShape Field => new(FrameWidthPx * TangentPerPixel, FrameHeightPx * TangentPerPixel);

    private double TangentPerPixel =>
        Sensor.PixelMicrometres * Binning / (FocalLengthMillimetres * 1000.0);

    /// <summary>The focal length that a measured scale stands for.</summary>
    /// <param name="scale">Sky per pixel at the tangent point, more than 0.</param>
    /// <param name="pixelMicrometres">Edge of one pixel as written (binned) in µm.</param>
    /// <returns>The focal length in mm.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The scale is not more than 0.</exception>
    public static double FocalLengthFromScale(Angle scale, double pixelMicrometres) =>
        scale > Angle.Zero
            ? pixelMicrometres / 1000.0 / scale.Radians
            : throw new ArgumentOutOfRangeException(
                nameof(scale),
                scale.Arcseconds,
                "A scale is more than 0 arcsec a pixel."
            );

    /// <summary>The focal length that a measured angle between opposite edges stands for.</summary>
    /// <param name="between">The angle from edge to edge, more than 0 and less than 180°.</param>
    /// <param name="millimetres">The distance of the edges on the sensor in mm.</param>
    /// <returns>The focal length in mm: w / (2 tan(W/2)), not w / W, which is too long.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The angle is out of its range.</exception>
    public static double FocalLengthFromWidth(Angle between, double millimetres) =>
        between.Radians is > 0.0 and < Math.PI
            ? millimetres / (2.0 * Math.Tan(between.Radians / 2.0))
            : throw new ArgumentOutOfRangeException(
                nameof(between),
                between.Degrees,
                "The angle between two edges is more than 0 and less than 180 degrees."
            );

    /// <summary>The scales at a distance from the middle of the picture.</summary>
    /// <param name="fieldAngle">The angle from the optical axis, 0 to less than 90°.</param>
    /// <returns>Sky per pixel outwards (s cos²θ) and around (s cos θ), s the scale in the middle.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The angle is out of its range.</exception>
    public (Angle Radial, Angle Tangential) ScaleAt(Angle fieldAngle)
    {
        if (!(fieldAngle.Radians is >= 0.0 and < Math.PI / 2.0))
        {
            throw new ArgumentOutOfRangeException(
                nameof(fieldAngle),
                fieldAngle.Degrees,
                "A field angle is at least 0 and less than 90 degrees."
            );
        }

        var cos = Math.Cos(fieldAngle.Radians);
        return (Scale * (cos * cos), Scale * cos);
    }

    /// <summary>The world coordinates of a perfect frame of this rig.</summary>
    /// <param name="pose">Where the camera looks and how it is turned.</param>
    /// <returns>A tangent projection about the middle of the picture, rows running upwards as FITS has it.</returns>
    public TanWorldCoordinates WorldCoordinates(CameraPose pose) =>
        new(
            new PixelPosition((FrameWidthPx + 1) / 2.0, (FrameHeightPx + 1) / 2.0),
            pose.Centre,
            PixelMatrix.FromPositionAngle(pose.PositionAngle, Scale, Mirrored)
        );
}

using Framing.Sky;

namespace Framing.Rehearsal;

/// <summary>Where the pixels of a frame look, and how far they are from the lens's axis.</summary>
internal sealed class FrameGeometry
{
    private readonly double cornerPx;

    public FrameGeometry(FrameRecipe recipe)
    {
        var camera = recipe.Camera;
        var (width, height) = (camera.Sensor.WidthPx, camera.Sensor.HeightPx);
        cornerPx = double.Hypot(width, height) / 2.0;
        var middle = new PixelPosition((width + 1) / 2.0, (height + 1) / 2.0);
        var matrix = PixelMatrix.FromPositionAngle(
            recipe.Pose.PositionAngle,
            recipe.Scale,
            recipe.Lens.Mirrored
        );
        WorldCoordinates whole = Distortion(recipe.Lens) is { } sip
            ? ProjectedWorldCoordinates.TanSip(middle, recipe.Pose.Centre, matrix, sip)
            : new TanWorldCoordinates(middle, recipe.Pose.Centre, matrix);
        var part = whole.Binned(camera.Binning);
        if (camera.Window is { } window)
        {
            part = part.Cropped(window.Left, window.Bottom);
        }

        Width = camera.FrameWidthPx;
        Height = camera.FrameHeightPx;
        Binning = camera.Binning;
        Coordinates = camera.RowsTopDown ? part.WithRowsReversed(Height) : part;
    }

    /// <summary>Columns of the frame.</summary>
    public int Width { get; }

    /// <summary>Rows of the frame.</summary>
    public int Height { get; }

    public int Binning { get; }

    /// <summary>Where the frame lies, as the file's axes run.</summary>
    public WorldCoordinates Coordinates { get; }

    /// <summary>The distance of a pixel, counted from 0, from the lens's axis: 1 at the sensor's corners.</summary>
    public double FieldRadius(double column, double row) =>
        double.Hypot(
            column + 1.0 - Coordinates.ReferencePixel.X,
            row + 1.0 - Coordinates.ReferencePixel.Y
        )
        * Binning
        / cornerPx;

    /// <summary>The direction away from the lens's axis, of length 1; none on the axis.</summary>
    public (double X, double Y) Outwards(double column, double row)
    {
        var (x, y) = (
            column + 1.0 - Coordinates.ReferencePixel.X,
            row + 1.0 - Coordinates.ReferencePixel.Y
        );
        var length = double.Hypot(x, y);
        return length > 1e-9 ? (x / length, y / length) : (0.0, 0.0);
    }

    /// <summary>All the sky that the sensor sees lies within this of its middle.</summary>
    public Angle Reach(FrameRecipe recipe) =>
        Angle.FromRadians(1.02 * Math.Atan((cornerPx + 60.0) * recipe.Scale.Radians));

    /// <summary>SIP counts from the pixel to the sky: what the lens moves outwards has to be taken back.</summary>
    private SipDistortion? Distortion(LensModel lens)
    {
        if (lens.DistortionPx == 0.0 && lens.TiltPx == 0.0)
        {
            return null;
        }

        var cubic = -lens.DistortionPx / (cornerPx * cornerPx * cornerPx);
        var (alongU, alongV) = (
            -0.8 * lens.TiltPx / (cornerPx * cornerPx),
            -0.6 * lens.TiltPx / (cornerPx * cornerPx)
        );
        return new(
            new PixelPolynomial(
                3,
                (p, q) =>
                    (p, q) switch
                    {
                        (3, 0) or (1, 2) => cubic,
                        (2, 0) => alongU,
                        (1, 1) => alongV,
                        _ => 0.0,
                    }
            ),
            new PixelPolynomial(
                3,
                (p, q) =>
                    (p, q) switch
                    {
                        (0, 3) or (2, 1) => cubic,
                        (1, 1) => alongU,
                        (0, 2) => alongV,
                        _ => 0.0,
                    }
            )
        );
    }
}

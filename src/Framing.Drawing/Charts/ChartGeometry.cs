using Framing.Sky;

namespace Framing.Drawing;

/// <summary>Where the chart stands in the picture, and which direction on the sky each of its pixels shows.</summary>
public sealed class ChartGeometry
{
    internal ChartGeometry(ChartView view, PictureSize picture, Box frame)
    {
        View = view;
        Picture = picture;
        Frame = frame;
        var tangentPerPixel = Math.Max(
            2.0 * Math.Tan(view.Width.Radians / 2.0) / frame.Width,
            2.0 * Math.Tan(view.Height.Radians / 2.0) / frame.Height
        );
        var middle = frame.Middle;
        WorldCoordinates = new TanWorldCoordinates(
            new PixelPosition(middle.X + 0.5, picture.Height - middle.Y + 0.5),
            view.Centre,
            PixelMatrix.FromPositionAngle(
                view.Up,
                Angle.FromRadians(tangentPerPixel),
                view.Mirrored
            )
        );
    }

    /// <summary>The view that the chart shows.</summary>
    public ChartView View { get; }

    /// <summary>The size of the picture.</summary>
    public PictureSize Picture { get; }

    /// <summary>The first column of the chart, counted from 0.</summary>
    public int Left => (int)Frame.Left;

    /// <summary>The top row of the chart, counted from 0.</summary>
    public int Top => (int)Frame.Top;

    /// <summary>Columns of the chart.</summary>
    public int Width => (int)Frame.Width;

    /// <summary>Rows of the chart.</summary>
    public int Height => (int)Frame.Height;

    /// <summary>World coordinates of the whole picture, rows counted upwards as FITS has it.</summary>
    public TanWorldCoordinates WorldCoordinates { get; }

    /// <summary>World coordinates of the chart alone, rows counted upwards as FITS has it.</summary>
    public TanWorldCoordinates ChartWorldCoordinates =>
        WorldCoordinates.Cropped(Left, Picture.Height - Top - Height);

    /// <summary>Sky per pixel at the middle of the chart.</summary>
    public Angle Scale => WorldCoordinates.Matrix.Scale;

    /// <summary>The angle from the left to the right edge through the middle.</summary>
    public Angle FieldWidth => Field(Width);

    /// <summary>The angle from the lower to the upper edge through the middle.</summary>
    public Angle FieldHeight => Field(Height);

    internal Box Frame { get; }

    /// <summary>The place in the picture that shows a direction.</summary>
    /// <param name="direction">Any direction.</param>
    /// <param name="point">The place, also beyond the chart's edges; meaningless when the answer is false.</param>
    /// <returns>False for a direction 90° or more from the middle of the chart, which has no image.</returns>
    public bool TrySkyToPicture(SkyDirection direction, out PicturePoint point)
    {
        if (!WorldCoordinates.TrySkyToPixel(direction, out var pixel))
        {
            point = default;
            return false;
        }

        point = new(pixel.X - 0.5, Picture.Height + 0.5 - pixel.Y);
        return true;
    }

    /// <summary>The direction that a place of the picture shows.</summary>
    /// <param name="point">The place.</param>
    /// <returns>The direction, also for a place beyond the chart's edges.</returns>
    public SkyDirection PictureToSky(PicturePoint point) =>
        WorldCoordinates.PixelToSky(new(point.X + 0.5, Picture.Height + 0.5 - point.Y));

    /// <summary>True when a place lies within the chart.</summary>
    /// <param name="point">The place in the picture.</param>
    /// <returns>True inside, and on the left and upper edge.</returns>
    public bool Holds(PicturePoint point) => Frame.Holds(point);

    private Angle Field(int pixels) =>
        Angle.FromRadians(2.0 * Math.Atan(Scale.Radians * pixels / 2.0));
}

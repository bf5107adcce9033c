using Framing.Sky;

namespace Framing.Imaging;

/// <summary>Where a picture lies on the sky, both as the file's axes run and as the picture is displayed.</summary>
public sealed record SkyFacts
{
    private SkyFacts() { }

    /// <summary>The direction at the middle of the picture.</summary>
    public required SkyDirection Centre { get; init; }

    /// <summary>Sky per pixel along the first axis, at the tangent point.</summary>
    public required Angle ScaleX { get; init; }

    /// <summary>Sky per pixel along the second axis, at the tangent point.</summary>
    public required Angle ScaleY { get; init; }

    /// <summary>The sky between the middles of the left and right edges.</summary>
    public required Angle FieldWidth { get; init; }

    /// <summary>The sky between the middles of the lower and upper edges.</summary>
    public required Angle FieldHeight { get; init; }

    /// <summary>Position angle of the file's +y axis at the middle of the picture.</summary>
    public required PositionAngle PositionAngle { get; init; }

    /// <summary>Position angle of the file's +x axis at the middle of the picture.</summary>
    public required PositionAngle PositionAngleOfX { get; init; }

    /// <summary>True when, with x to the right and y up, the picture is mirrored against the sky as the eye sees it.</summary>
    public required bool Mirrored { get; init; }

    /// <summary>Position angle of the displayed picture's up direction at its middle.</summary>
    public required PositionAngle DisplayedPositionAngle { get; init; }

    /// <summary>True when the displayed picture is mirrored.</summary>
    public required bool DisplayedMirrored { get; init; }

    /// <summary>Directions of the outer corners at pixels (0.5, 0.5), (w + 0.5, 0.5), (w + 0.5, h + 0.5), (0.5, h + 0.5).</summary>
    public required IReadOnlyList<SkyDirection> Corners { get; init; }

    /// <summary>The same corners as displayed: top left, top right, bottom right, bottom left.</summary>
    public required IReadOnlyList<SkyDirection> DisplayedCorners { get; init; }

    /// <summary>Works the facts out.</summary>
    /// <param name="coordinates">The solution.</param>
    /// <param name="width">Columns.</param>
    /// <param name="height">Rows.</param>
    /// <param name="rowsTopDown">True when y grows downwards as displayed.</param>
    /// <returns>The facts.</returns>
    public static SkyFacts Of(
        TanWorldCoordinates coordinates,
        int width,
        int height,
        bool rowsTopDown
    )
    {
        ArgumentNullException.ThrowIfNull(coordinates);
        var centre = new PixelPosition((width + 1) / 2.0, (height + 1) / 2.0);
        var up = coordinates.PositionAngleOfYAt(centre);
        var (left, right, bottom, top) = (0.5, width + 0.5, 0.5, height + 0.5);
        SkyDirection[] corners =
        [
            coordinates.PixelToSky(new(left, bottom)),
            coordinates.PixelToSky(new(right, bottom)),
            coordinates.PixelToSky(new(right, top)),
            coordinates.PixelToSky(new(left, top)),
        ];
        return new()
        {
            Centre = coordinates.PixelToSky(centre),
            ScaleX = coordinates.Matrix.ScaleX,
            ScaleY = coordinates.Matrix.ScaleY,
            FieldWidth = Between(coordinates, new(left, centre.Y), new(right, centre.Y)),
            FieldHeight = Between(coordinates, new(centre.X, bottom), new(centre.X, top)),
            PositionAngle = up,
            PositionAngleOfX = Along(coordinates, centre),
            Mirrored = coordinates.Matrix.IsMirrored,
            DisplayedPositionAngle = rowsTopDown ? up.Opposite : up,
            DisplayedMirrored = coordinates.Matrix.IsMirrored != rowsTopDown,
            Corners = corners,
            DisplayedCorners = rowsTopDown
                ? corners
                : [corners[3], corners[2], corners[1], corners[0]],
        };
    }

    private static Angle Between(
        TanWorldCoordinates coordinates,
        PixelPosition from,
        PixelPosition to
    ) => coordinates.PixelToSky(from).SeparationTo(coordinates.PixelToSky(to));

    private static PositionAngle Along(TanWorldCoordinates coordinates, PixelPosition at)
    {
        var here = coordinates.PixelToSky(at);
        var step =
            coordinates.PixelToSky(at with { X = at.X + 0.5 }).Vector
            - coordinates.PixelToSky(at with { X = at.X - 0.5 }).Vector;
        return PositionAngle.FromAngle(
            Angle.FromRadians(Math.Atan2(step.Dot(here.East), step.Dot(here.North)))
        );
    }
}

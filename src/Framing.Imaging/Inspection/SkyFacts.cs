using Framing.Sky;

namespace Framing.Imaging;

/// <summary>Where a picture lies on the sky, both as the file's axes run and as the picture is displayed.</summary>
public sealed record SkyFacts
{
    private SkyFacts() { }

    /// <summary>The direction at the middle of the picture.</summary>
    public required SkyDirection Centre { get; init; }

    /// <summary>Sky per pixel along the first axis: at the reference point of a tangent projection, else at the middle.</summary>
    public required Angle ScaleX { get; init; }

    /// <summary>Sky per pixel along the second axis, at the same place.</summary>
    public required Angle ScaleY { get; init; }

    /// <summary>The sky between the middles of the left and right edges; null where an edge shows no sky.</summary>
    public required Angle? FieldWidth { get; init; }

    /// <summary>The sky between the middles of the lower and upper edges; null where an edge shows no sky.</summary>
    public required Angle? FieldHeight { get; init; }

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

    /// <summary>
    /// Directions of the outer corners at pixels (0.5, 0.5), (w + 0.5, 0.5), (w + 0.5, h + 0.5), (0.5, h + 0.5); empty
    /// where a corner shows no sky, as in a map of the whole sky.
    /// </summary>
    public required IReadOnlyList<SkyDirection> Corners { get; init; }

    /// <summary>The same corners as displayed: top left, top right, bottom right, bottom left.</summary>
    public required IReadOnlyList<SkyDirection> DisplayedCorners { get; init; }

    /// <summary>Works the facts out.</summary>
    /// <param name="coordinates">The solution.</param>
    /// <param name="width">Columns.</param>
    /// <param name="height">Rows.</param>
    /// <param name="rowsTopDown">True when y grows downwards as displayed.</param>
    /// <returns>The facts; null where the middle of the picture shows no sky.</returns>
    public static SkyFacts? Of(
        WorldCoordinates coordinates,
        int width,
        int height,
        bool rowsTopDown
    )
    {
        ArgumentNullException.ThrowIfNull(coordinates);
        var middle = new PixelPosition((width + 1) / 2.0, (height + 1) / 2.0);
        if (
            !coordinates.TryCentre(width, height, out var centre)
            || !coordinates.TryMatrixAt(middle, out var there)
        )
        {
            return null;
        }

        // The scale of a lens is that of its axis; a map has no axis, and its scale is that of the picture's middle.
        var scale = coordinates.Projection == "TAN" ? coordinates.Matrix : there;
        _ = coordinates.TryCorners(width, height, out var corners);
        var up = there.PositionAngleOfY;
        return new()
        {
            Centre = centre,
            ScaleX = scale.ScaleX,
            ScaleY = scale.ScaleY,
            FieldWidth = Between(coordinates, new(0.5, middle.Y), new(width + 0.5, middle.Y)),
            FieldHeight = Between(coordinates, new(middle.X, 0.5), new(middle.X, height + 0.5)),
            PositionAngle = up,
            PositionAngleOfX = there.PositionAngleOfX,
            Mirrored = there.IsMirrored,
            DisplayedPositionAngle = rowsTopDown ? up.Opposite : up,
            DisplayedMirrored = there.IsMirrored != rowsTopDown,
            Corners = corners,
            DisplayedCorners =
                rowsTopDown || corners.Count == 0
                    ? corners
                    : [corners[3], corners[2], corners[1], corners[0]],
        };
    }

    private static Angle? Between(
        WorldCoordinates coordinates,
        PixelPosition from,
        PixelPosition to
    ) =>
        coordinates.TryPixelToSky(from, out var first)
        && coordinates.TryPixelToSky(to, out var second)
            ? first.SeparationTo(second)
            : null;
}

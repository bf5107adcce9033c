using Framing.Sky;

namespace Framing.Rehearsal;

/// <summary>A made frame, and the truth about it.</summary>
public sealed class RehearsedFrame
{
    /// <summary>What it was made from.</summary>
    public required FrameRecipe Recipe { get; init; }

    /// <summary>Columns.</summary>
    public required int Width { get; init; }

    /// <summary>Rows.</summary>
    public required int Height { get; init; }

    /// <summary>The numbers, row after row as the file stores them.</summary>
    public required ushort[] Samples { get; init; }

    /// <summary>Where it lies on the sky, as the file's axes run; without meaning for a frame that shows no sky.</summary>
    public required WorldCoordinates Coordinates { get; init; }

    /// <summary>Its stars, brightest first; none for a frame that shows no sky.</summary>
    public required IReadOnlyList<FrameStar> Stars { get; init; }

    /// <summary>The noise of a pixel of the empty sky in the middle, in the frame's numbers, 1 sigma.</summary>
    public required double Noise { get; init; }

    /// <summary>The middle of the frame and the direction of the displayed picture's up there.</summary>
    public CameraPose Pose
    {
        get
        {
            var middle = new PixelPosition((Width + 1) / 2.0, (Height + 1) / 2.0);
            _ = Coordinates.TryMatrixAt(middle, out var matrix);
            var up = matrix.PositionAngleOfY;
            return new(
                Coordinates.PixelToSky(middle),
                Recipe.Camera.RowsTopDown ? up.Opposite : up
            );
        }
    }
}

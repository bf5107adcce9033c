using Framing.Imaging;
using Framing.Sky;
using Framing.Workshop;

namespace Framing.Cli.Commands;

/// <summary>Where a direction appears in a picture.</summary>
/// <param name="Direction">The direction asked for.</param>
/// <param name="Pixel">The place, perhaps beyond the edges; null when it appears nowhere in the picture's plane.</param>
/// <param name="Failure">Why it appears nowhere; none where it does.</param>
/// <param name="Inside">True when the place lies within the picture.</param>
internal sealed record SkyAnswer(
    SkyDirection Direction,
    PixelPosition? Pixel,
    MapFailure Failure,
    bool Inside
)
{
    /// <summary>What lies further out is a point that the projection sends to infinity, but for rounding.</summary>
    private const double FurthestPixel = 1e9;

    public static SkyAnswer Of(PictureFacts facts, SkyDirection direction)
    {
        if (facts.Coordinates is not { } coordinates)
        {
            throw new InputException(
                $"{facts.Name}: the picture does not say where on the sky it lies, so --sky has no answer."
            );
        }

        var failure = coordinates.SkyToPixel(direction, out var pixel);
        if (failure == MapFailure.None && !(double.Hypot(pixel.X, pixel.Y) <= FurthestPixel))
        {
            failure = MapFailure.OffTheMap;
        }

        return failure == MapFailure.None
            ? new(direction, pixel, failure, facts.Contains(pixel))
            : new(direction, null, failure, false);
    }
}

using Framing.Imaging;
using Framing.Sky;
using Framing.Workshop;

namespace Framing.Cli.Commands;

/// <summary>Where a direction appears in a picture.</summary>
/// <param name="Direction">The direction asked for.</param>
/// <param name="Pixel">The place, perhaps beyond the edges; null when it lies behind the tangent plane.</param>
/// <param name="Inside">True when the place lies within the picture.</param>
internal sealed record SkyAnswer(SkyDirection Direction, PixelPosition? Pixel, bool Inside)
{
    public static SkyAnswer Of(PictureFacts facts, SkyDirection direction)
    {
        if (facts.Coordinates is not { } coordinates)
        {
            throw new InputException(
                $"{facts.Name}: the picture does not say where on the sky it lies, so --sky has no answer."
            );
        }

        return coordinates.TrySkyToPixel(direction, out var pixel)
            ? new(direction, pixel, facts.Contains(pixel))
            : new(direction, null, false);
    }
}

using Framing.Imaging;
using Framing.Sky;

namespace Framing.Cli.Commands;

/// <summary>What lies at a pixel.</summary>
/// <param name="Pixel">The place asked for.</param>
/// <param name="Direction">Its direction; null without a solution, or where the picture shows no sky.</param>
/// <param name="Values">One sample a plane, null where it is not defined; empty outside the picture.</param>
internal sealed record PixelAnswer(
    PixelPosition Pixel,
    SkyDirection? Direction,
    IReadOnlyList<double?> Values
)
{
    public static PixelAnswer Of(string path, PictureFacts facts, PixelPosition pixel) =>
        new(
            pixel,
            facts.Coordinates is { } coordinates
            && coordinates.TryPixelToSky(pixel, out var direction)
                ? direction
                : null,
            [
                .. PictureFile
                    .ReadSamples(path, pixel)
                    .Select(value => value.IsDefined ? value.Number : (double?)null),
            ]
        );
}

using Framing.Sky;

namespace Framing.Drawing;

/// <summary>How long each place of the sky was exposed, as colours from dark blue (little) to yellow (most).</summary>
/// <remarks>
/// The colours are those of cividis, made for eyes that see red and green alike (Nuñez, Anderton and Renslow 2018, PLoS ONE 13,
/// e0199239); eleven of its steps from memory, mixed in between.
/// </remarks>
public sealed class ExposureDepth : IBackdrop
{
    // Depth is worked out at every third pixel: frames have straight edges, and nobody measures here.
    private const int Step = 3;

    private static readonly (byte Red, byte Green, byte Blue)[] Colours =
    [
        (0, 34, 78),
        (18, 53, 112),
        (59, 73, 108),
        (76, 85, 108),
        (98, 101, 113),
        (124, 123, 120),
        (149, 144, 119),
        (165, 156, 116),
        (195, 179, 105),
        (225, 204, 85),
        (254, 232, 56),
    ];

    private readonly List<(SkyPolygon Area, double Seconds)> frames;

    /// <summary>Makes the depth of frames.</summary>
    /// <param name="frames">Outer corners of each frame in order, and its exposure in seconds.</param>
    public ExposureDepth(
        IReadOnlyList<(IReadOnlyList<SkyDirection> Corners, double Seconds)> frames
    )
    {
        ArgumentNullException.ThrowIfNull(frames);
        this.frames = [.. frames.Select(frame => (new SkyPolygon(frame.Corners), frame.Seconds))];

        // The deepest place lies in the middle of a frame as nearly as a picture shows.
        DeepestSeconds = this.frames.Select(frame => At(frame.Area.Middle)).DefaultIfEmpty().Max();
    }

    /// <summary>The longest exposure at the middle of any frame, in seconds.</summary>
    public double DeepestSeconds { get; }

    /// <summary>How long a place was exposed.</summary>
    /// <param name="place">The place.</param>
    /// <returns>Seconds, of all frames that show it.</returns>
    public double At(SkyDirection place)
    {
        var sum = 0.0;
        foreach (var (area, seconds) in frames)
        {
            if (area.Contains(place))
            {
                sum += seconds;
            }
        }

        return sum;
    }

    /// <inheritdoc/>
    public void Fill(TanWorldCoordinates chart, int width, int height, Span<byte> pixels)
    {
        ArgumentNullException.ThrowIfNull(chart);
        for (var top = 0; top < height; top += Step)
        {
            for (var left = 0; left < width; left += Step)
            {
                var depth = At(
                    chart.PixelToSky(new(left + (Step / 2) + 1.0, height - top - (Step / 2)))
                );
                if (depth <= 0.0)
                {
                    continue;
                }

                var (red, green, blue) = Colour(depth / Math.Max(DeepestSeconds, 1e-9));
                for (var y = top; y < Math.Min(top + Step, height); y++)
                {
                    for (var x = left; x < Math.Min(left + Step, width); x++)
                    {
                        var at = 4 * ((y * width) + x);
                        (pixels[at], pixels[at + 1], pixels[at + 2], pixels[at + 3]) = (
                            red,
                            green,
                            blue,
                            255
                        );
                    }
                }
            }
        }
    }

    private static (byte Red, byte Green, byte Blue) Colour(double part)
    {
        var place = Math.Clamp(part, 0.0, 1.0) * (Colours.Length - 1);
        var low = Math.Min((int)place, Colours.Length - 2);
        var mix = place - low;
        byte Mixed(byte from, byte to) => (byte)Math.Round(from + (mix * (to - from)));
        var (a, b) = (Colours[low], Colours[low + 1]);
        return (Mixed(a.Red, b.Red), Mixed(a.Green, b.Green), Mixed(a.Blue, b.Blue));
    }
}

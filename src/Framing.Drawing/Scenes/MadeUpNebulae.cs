using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Drawing;

/// <summary>Made-up light inside the outlines of nebulae, for a chart without a picture: a hint of what will be there.</summary>
/// <remarks>
/// <list type="number">
/// <item>Clouds and threads from a seed, brightest well inside an outline and gone at its border. They say nothing of where
/// the real nebula is bright; the legend of the picture calls them made up.</item>
/// <item>They hang on the sky: whatever chart, size or angle is drawn, the same seed shows the same clouds.</item>
/// <item>Only outlines of <see cref="ChartObjectKind.Nebula"/> shine. Clusters, galaxies and dark nebulae stay as they
/// are, and so do outlines of more than 60° radius.</item>
/// </list>
/// </remarks>
public sealed class MadeUpNebulae : IBackdrop
{
    /// <summary>The seed that is used unless another is asked for.</summary>
    public const ulong UsualSeed = 10;

    // Light is worked out at every third pixel and mixed between: the clouds have nothing finer.
    private const int Step = 3;

    private const byte Red = 0xD8;
    private const byte Green = 0x86;
    private const byte Blue = 0xA6;
    private const double MostOpacity = 0.62;

    private readonly List<Glow> glows = [];

    /// <summary>Makes the light of some objects.</summary>
    /// <param name="objects">Objects of any kind.</param>
    /// <param name="seed">Any number: each makes other clouds.</param>
    public MadeUpNebulae(IEnumerable<ChartObject> objects, ulong seed = UsualSeed)
    {
        ArgumentNullException.ThrowIfNull(objects);
        foreach (var nebula in objects.Where(entry => entry.Kind == ChartObjectKind.Nebula))
        {
            glows.AddRange(nebula.Outline.Areas.Select(area => new Glow(area, seed)));
        }
    }

    /// <inheritdoc/>
    public bool IsMadeUp => true;

    /// <summary>What the legend shows of it: a small cloud, in the colours of a palette.</summary>
    internal static byte[] Sample(int width, int height, Palette palette)
    {
        var middle = SkyDirection.FromDegrees(0.0, 0.0);
        var outline = SkyOutline.Ellipse(
            middle,
            Angle.FromDegrees(1.1 * width / height),
            Angle.FromDegrees(1.1),
            PositionAngle.FromDegrees(90.0)
        );
        var cloud = new MadeUpNebulae([new(string.Empty, ChartObjectKind.Nebula, outline)]);
        var chart = new TanWorldCoordinates(
            new((width + 1) / 2.0, (height + 1) / 2.0),
            middle,
            PixelMatrix.FromPositionAngle(
                PositionAngle.North,
                Angle.FromDegrees(1.0 / height),
                mirrored: false
            )
        );
        var pixels = new byte[4 * width * height];
        cloud.Fill(chart, width, height, pixels);
        if (!palette.TintsStars)
        {
            GroundLayer.InRed(pixels);
        }

        return pixels;
    }

    /// <inheritdoc/>
    public void Fill(TanWorldCoordinates chart, int width, int height, Span<byte> pixels)
    {
        ArgumentNullException.ThrowIfNull(chart);
        if (pixels.Length != 4 * width * height)
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"{pixels.Length} bytes were given for {width} x {height} pixels of four bytes."
                ),
                nameof(pixels)
            );
        }

        var columns = ((width + Step - 1) / Step) + 1;
        var rows = ((height + Step - 1) / Step) + 1;
        var light = Light(chart, columns, rows, height);
        for (var row = 0; row < height; row++)
        {
            var (j, v) = (row / Step, row % Step / (double)Step);
            for (var column = 0; column < width; column++)
            {
                var (i, u) = (column / Step, column % Step / (double)Step);
                var at = (j * columns) + i;
                var above = light[at] + ((light[at + 1] - light[at]) * u);
                var below =
                    light[at + columns] + ((light[at + columns + 1] - light[at + columns]) * u);
                var pixel = pixels.Slice(4 * ((row * width) + column), 4);
                (pixel[0], pixel[1], pixel[2]) = (Red, Green, Blue);
                pixel[3] = (byte)Math.Round(255.0 * MostOpacity * (above + ((below - above) * v)));
            }
        }
    }

    /// <summary>The light at every third pixel, the top row first.</summary>
    private double[] Light(TanWorldCoordinates chart, int columns, int rows, int height)
    {
        var light = new double[columns * rows];
        var finest = 2.0 * Step * chart.Matrix.Scale.Radians;
        Parallel.For(
            0,
            rows,
            row =>
            {
                for (var column = 0; column < columns; column++)
                {
                    var direction = chart.PixelToSky(
                        new((column * Step) + 1.0, height - (row * (double)Step))
                    );
                    var sum = 0.0;
                    foreach (var glow in glows)
                    {
                        // Lights that lie over each other never outshine the brightest ink.
                        sum += (1.0 - sum) * glow.At(direction, finest);
                    }

                    light[(row * columns) + column] = sum;
                }
            }
        );
        return light;
    }
}

using Framing.Drawing;
using Framing.Imaging;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>Lays a picture that knows its place on the sky under a chart.</summary>
internal sealed class PictureBackdrop : IBackdrop
{
    private readonly Picture picture;
    private readonly Stretch stretch;

    private PictureBackdrop(Picture picture)
    {
        this.picture = picture;
        stretch = Stretch.For(picture);
    }

    /// <summary>Reads a picture.</summary>
    /// <param name="path">The file.</param>
    /// <returns>The backdrop.</returns>
    /// <exception cref="InputException">The file has no solution: it says what to do.</exception>
    public static PictureBackdrop Read(string path)
    {
        var read = PictureFile.Read(path);
        if (read.Coordinates is null)
        {
            throw new InputException(NoSolution.Explain(path, PictureFile.Inspect(path)));
        }

        return new(read);
    }

    public void Fill(TanWorldCoordinates chart, int width, int height, Span<byte> pixels)
    {
        // The chart counts its rows upwards; drawn pixels start with the top row.
        var drawn = Resampler.Resample(picture, chart.WithRowsReversed(height), width, height);
        var channel = new byte[width * height];
        for (var colour = 0; colour < 3; colour++)
        {
            var plane = Math.Min(colour, drawn.Planes - 1);
            if (plane == colour)
            {
                stretch.Apply(plane, drawn.Plane(plane), channel);
            }

            for (var i = 0; i < channel.Length; i++)
            {
                pixels[(4 * i) + colour] = channel[i];
            }
        }

        var covered = drawn.Covered;
        for (var i = 0; i < covered.Length; i++)
        {
            pixels[(4 * i) + 3] = covered[i] ? (byte)255 : (byte)0;
        }
    }
}

using Framing.Imaging;
using Framing.Sky;

namespace Framing.Drawing;

/// <summary>A picture of the user's own, laid on the sky by its solution.</summary>
public sealed class PictureBackdrop : IBackdrop
{
    private readonly Picture picture;
    private readonly Stretch stretch;

    /// <summary>Makes a backdrop.</summary>
    /// <param name="picture">The picture; it must have coordinates.</param>
    /// <param name="stretch">How its samples are shown; by default as suits the picture.</param>
    /// <exception cref="ArgumentException">The picture has no coordinates.</exception>
    public PictureBackdrop(Picture picture, Stretch? stretch = null)
    {
        ArgumentNullException.ThrowIfNull(picture);
        if (picture.Coordinates is null)
        {
            throw new ArgumentException(
                $"The picture \"{picture.Name}\" has no place on the sky.",
                nameof(picture)
            );
        }

        this.picture = picture;
        this.stretch = stretch ?? Stretch.For(picture);
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

        // The chart's top row first: rows reversed against FITS.
        var drawn = Resampler.Resample(picture, chart.WithRowsReversed(height), width, height);
        stretch.Show(drawn, pixels);
    }
}

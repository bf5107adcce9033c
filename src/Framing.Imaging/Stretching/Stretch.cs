using Framing.Fits;

namespace Framing.Imaging;

/// <summary>How a picture's samples are shown: one tone curve for each plane.</summary>
public sealed class Stretch
{
    /// <summary>The brightness at which the sky background is shown: dark, but clearly above black.</summary>
    private const float Background = 0.16f;

    /// <summary>Black stands this many standard deviations of the background below it, so that hardly a sample is lost.</summary>
    private const float BelowBackground = 3f;

    private readonly ToneCurve[] curves;

    private Stretch(params ToneCurve[] curves) => this.curves = curves;

    /// <summary>The curves, one a plane.</summary>
    public IReadOnlyList<ToneCurve> Curves => curves;

    /// <summary>Shows samples as they are: the range of the sample format from black to white, without a bend.</summary>
    /// <param name="picture">The picture; of IEEE samples, the range that is there.</param>
    /// <returns>The stretch.</returns>
    public static Stretch AsStored(Picture picture)
    {
        ArgumentNullException.ThrowIfNull(picture);
        var (black, white) = picture.SampleFormat switch
        {
            SampleFormat.UInt8 => (0f, 255f),
            SampleFormat.UInt16 => (0f, 65535f),
            _ when SampleStatistics.Of(picture, 0, picture.Planes) is { } all
                    && all.Greatest > all.Least => (all.Least, all.Greatest),
            _ => (0f, 1f),
        };
        return Same(picture, new(black, white, 0.5f));
    }

    /// <summary>Finds curves that show faint things: the sky dark grey, the brightest 0.05 % white.</summary>
    /// <param name="picture">The picture.</param>
    /// <param name="linked">True for one curve for all colours, which keeps their balance; false for one each.</param>
    /// <returns>The stretch; for a picture of one value throughout, or none, the one that shows it dark grey.</returns>
    /// <remarks>From the median and the spread about it (see <see cref="SampleStatistics"/>), so that stars hardly matter.</remarks>
    public static Stretch Automatic(Picture picture, bool linked = true)
    {
        ArgumentNullException.ThrowIfNull(picture);
        if (linked)
        {
            return Same(picture, Curve(SampleStatistics.Of(picture, 0, picture.Planes)));
        }

        var each = new ToneCurve[picture.Planes];
        for (var plane = 0; plane < each.Length; plane++)
        {
            each[plane] = Curve(SampleStatistics.Of(picture, plane, 1));
        }

        return new(each);
    }

    /// <summary>
    /// The stretch that suits a picture: as stored for a PNG, JPEG or TIFF that is already made for the eye, automatic for everything else.
    /// </summary>
    /// <param name="picture">The picture.</param>
    /// <returns>The stretch.</returns>
    /// <remarks>A picture of 8 or 16 bits, no FITS, counts as made for the eye when its median stands above 4 % of its range.</remarks>
    public static Stretch For(Picture picture)
    {
        ArgumentNullException.ThrowIfNull(picture);
        if (
            picture.Format != PictureFormat.Fits
            && (picture.SampleFormat is SampleFormat.UInt8 or SampleFormat.UInt16)
        )
        {
            var stored = AsStored(picture);
            var all = SampleStatistics.Of(picture, 0, picture.Planes);
            if (all is { } found && stored.curves[0].Apply(found.Median) > 0.04f)
            {
                return stored;
            }
        }

        return Automatic(picture);
    }

    /// <summary>Turns samples into bytes for a screen.</summary>
    /// <param name="plane">Whose curve to use.</param>
    /// <param name="samples">The samples.</param>
    /// <param name="shown">Takes 0 (black) to 255 (white); 0 for NaN.</param>
    /// <exception cref="ArgumentException">The spans differ in length.</exception>
    public void Apply(int plane, ReadOnlySpan<float> samples, Span<byte> shown)
    {
        if (samples.Length != shown.Length)
        {
            throw new ArgumentException("Samples and bytes differ in length.", nameof(shown));
        }

        var curve = curves[plane];
        for (var i = 0; i < samples.Length; i++)
        {
            var brightness = curve.Apply(samples[i]);
            shown[i] = float.IsNaN(brightness) ? (byte)0 : (byte)((brightness * 255f) + 0.5f);
        }
    }

    /// <summary>Shows a drawn picture as pixels of four bytes: red, green, blue, and 255 where it covers, else 0.</summary>
    /// <param name="drawn">The picture, with as many planes as there are curves.</param>
    /// <param name="pixels">Takes four bytes a pixel, row after row.</param>
    /// <param name="localContrast">How much faint, wide structure is raised, 0 to 10: see <see cref="LocalContrast"/>.</param>
    /// <exception cref="ArgumentException">The bytes do not fit the size, or the planes the curves.</exception>
    /// <remarks>
    /// Colours keep their hue: the curve works on the mean of the three, each is multiplied by what it does to the mean, and
    /// where one would be brighter than white all three are dimmed. So stars keep their colours, up to those whose samples
    /// are saturated. With a curve for each colour the backgrounds are brought to the same grey first.
    /// Source: Lupton and others 2004, PASP 116, 133.
    /// </remarks>
    public void Show(ResampledPicture drawn, Span<byte> pixels, float localContrast = 0f)
    {
        ArgumentNullException.ThrowIfNull(drawn);
        if (pixels.Length != 4L * drawn.Width * drawn.Height || drawn.Planes != curves.Length)
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"{pixels.Length} bytes and {curves.Length} curves were given for {drawn.Width} x {drawn.Height} pixels of {drawn.Planes} planes."
                ),
                nameof(pixels)
            );
        }

        new ShownColours(curves, Background).Show(drawn, pixels, localContrast);
    }

    private static Stretch Same(Picture picture, ToneCurve curve)
    {
        var same = new ToneCurve[picture.Planes];
        Array.Fill(same, curve);
        return new(same);
    }

    private static ToneCurve Curve(SampleStatistics? found)
    {
        if (found is not { } all)
        {
            return new(0f, 1f, 0.5f);
        }

        // A background without any spread (a rendered picture) still gets a little room below it.
        var room = Math.Max(
            BelowBackground * all.Spread,
            Math.Max(1e-3f * (all.Bright - all.Median), 1e-6f * Math.Abs(all.Median))
        );
        var black = Math.Max(all.Median - room, Math.Min(all.Least, all.Median - (room / 3f)));
        var white = Math.Max(all.Bright, all.Median + (5f * room));
        if (!(white > black))
        {
            white = black + 1f;
        }

        return new(
            black,
            white,
            ToneCurve.MiddleFor((all.Median - black) / (white - black), Background)
        );
    }
}

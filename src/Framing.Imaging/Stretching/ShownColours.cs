namespace Framing.Imaging;

/// <summary>Turns the planes of a drawn picture into colours for a screen, hue kept.</summary>
internal sealed class ShownColours
{
    private readonly ToneCurve[] curves;

    /// <summary>What a plane's share of the way from black to white is multiplied with, so that backgrounds are grey.</summary>
    private readonly float[] balance;

    /// <summary>The curve of the mean, from 0 to 1.</summary>
    private readonly ToneCurve common;

    public ShownColours(ToneCurve[] curves, float background)
    {
        this.curves = curves;
        var shares = Array.ConvertAll(curves, curve => curve.ShareShownAt(background));
        var mean = shares.Average();
        balance = Array.ConvertAll(shares, share => mean / share);
        common = new(
            0f,
            1f,
            Array.TrueForAll(curves, curve => curve.Middle == curves[0].Middle)
                ? curves[0].Middle
                : ToneCurve.MiddleFor(mean, background)
        );
    }

    public void Show(ResampledPicture drawn, Span<byte> pixels, float localContrast)
    {
        var brightness = new float[drawn.Width * drawn.Height];
        var means = new float[brightness.Length];
        for (var plane = 0; plane < drawn.Planes; plane++)
        {
            var samples = drawn.Plane(plane);
            for (var i = 0; i < means.Length; i++)
            {
                means[i] += Share(plane, samples[i]) / drawn.Planes;
            }
        }

        for (var i = 0; i < means.Length; i++)
        {
            brightness[i] = common.Apply(means[i]);
        }

        LocalContrast.Raise(brightness, drawn.Width, drawn.Height, localContrast);
        Span<float> colour = stackalloc float[3];
        for (var i = 0; i < means.Length; i++)
        {
            var pixel = pixels.Slice(4 * i, 4);
            if (float.IsNaN(means[i]))
            {
                pixel.Clear();
                continue;
            }

            var factor = means[i] > 0f ? brightness[i] / means[i] : 0f;
            var most = 1f;
            for (var channel = 0; channel < 3; channel++)
            {
                var plane = Math.Min(channel, drawn.Planes - 1);
                colour[channel] =
                    drawn.Planes == 1
                        ? brightness[i]
                        : Share(plane, drawn.Plane(plane)[i]) * factor;
                most = Math.Max(most, colour[channel]);
            }

            for (var channel = 0; channel < 3; channel++)
            {
                pixel[channel] = (byte)((colour[channel] / most * 255f) + 0.5f);
            }

            pixel[3] = 255;
        }
    }

    private float Share(int plane, float sample)
    {
        var share = curves[plane].Share(sample);
        return share < 0f ? 0f : share * balance[plane];
    }
}

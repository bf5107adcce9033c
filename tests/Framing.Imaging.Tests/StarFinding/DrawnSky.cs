using Framing.Fits;

namespace Framing.Imaging.Tests.StarFinding;

/// <summary>Draws stars of known place and light as bells onto a noisy plane, with nothing of the program.</summary>
internal sealed class DrawnSky
{
    private readonly Random random;
    private readonly float[] samples;

    public DrawnSky(int width, int height, double level, double noise, int seed)
    {
        (Width, Height, Noise) = (width, height, noise);
        random = new Random(seed);
        samples = new float[width * height];
        for (var i = 0; i < samples.Length; i++)
        {
            samples[i] = (float)(level + (noise * Normal()));
        }
    }

    public int Width { get; }

    public int Height { get; }

    public double Noise { get; }

    public List<(double X, double Y, double Flux)> Truth { get; } = [];

    public float this[int x, int y]
    {
        get => samples[(y * Width) + x];
        set => samples[(y * Width) + x] = value;
    }

    public double Between(double from, double to) => from + ((to - from) * random.NextDouble());

    /// <summary>A star at a FITS place: a bell of two sigmas, the long one along a direction.</summary>
    public void Star(
        double x,
        double y,
        double flux,
        double sigma,
        double length = 1.0,
        double direction = 0.0,
        Func<int, int, double>? colour = null
    )
    {
        Truth.Add((x, y, flux));
        var (sin, cos) = Math.SinCos(direction);
        var reach = (int)(6.0 * sigma * length) + 2;
        for (var j = Math.Max(0, (int)y - reach); j < Math.Min(Height, (int)y + reach); j++)
        {
            for (var i = Math.Max(0, (int)x - reach); i < Math.Min(Width, (int)x + reach); i++)
            {
                // Four by four points stand for the area of a pixel.
                var sum = 0.0;
                for (var k = 0; k < 16; k++)
                {
                    var dx = i + 1.0 + ((k % 4) * 0.25) - 0.375 - x;
                    var dy = j + 1.0 + ((k / 4) * 0.25) - 0.375 - y;
                    var along = ((dx * cos) + (dy * sin)) / (sigma * length);
                    var across = ((dy * cos) - (dx * sin)) / sigma;
                    sum += Math.Exp(-0.5 * ((along * along) + (across * across)));
                }

                this[i, j] += (float)(
                    flux
                    * (colour?.Invoke(i, j) ?? 1.0)
                    * sum
                    / (16.0 * 2.0 * Math.PI * sigma * sigma * length)
                );
            }
        }
    }

    /// <summary>Stars strewn at random, none nearer to another than a distance, S/N from about 10 to 1000.</summary>
    public DrawnSky Strew(
        int count,
        double sigma,
        double apart,
        double length = 1.0,
        double direction = 0.0
    )
    {
        while (Truth.Count < count)
        {
            var (x, y) = (Between(12.0, Width - 12.0), Between(12.0, Height - 12.0));
            if (!Truth.Exists(star => double.Hypot(star.X - x, star.Y - y) < apart))
            {
                var ratio = 10.0 * Math.Pow(10.0, Between(0.0, 2.0));
                Star(
                    x,
                    y,
                    ratio * Noise * 2.0 * Math.Sqrt(Math.PI) * sigma * length,
                    sigma,
                    length,
                    direction
                );
            }
        }

        return this;
    }

    public static FoundStars Find(Picture picture, int mostStars = 2000) =>
        StarFinder.Find(
            picture,
            new() { MostStars = mostStars },
            TestContext.Current.CancellationToken
        );

    public FoundStars Find(SampleFormat format = SampleFormat.UInt16) => Find(Picture(format));

    public Picture Picture(SampleFormat format = SampleFormat.UInt16)
    {
        var most =
            format == SampleFormat.UInt8 ? 255f
            : format == SampleFormat.UInt16 ? 65535f
            : float.MaxValue;
        var whole = format is SampleFormat.UInt8 or SampleFormat.UInt16;
        return new(
            Width,
            Height,
            Array.ConvertAll(
                samples,
                v =>
                    float.IsNaN(v) ? v
                    : whole ? Math.Clamp(MathF.Round(v), 0f, most)
                    : v
            )
        )
        {
            SampleFormat = format,
        };
    }

    public double Normal() =>
        Math.Sqrt(-2.0 * Math.Log(1.0 - random.NextDouble()))
        * Math.Cos(2.0 * Math.PI * random.NextDouble());

    /// <summary>Pairs found stars with drawn ones: how many drawn ones were found, how many were found that are none, rms along an axis.</summary>
    public (int Found, int False, double Rms, double Pull) Compare(
        FoundStars found,
        double within = 1.5,
        double leastSignalToNoise = 0.0
    )
    {
        var (hits, wrong, squares, pulls, measured) = (new HashSet<int>(), 0, 0.0, 0.0, 0);
        foreach (var star in found.Stars)
        {
            var best = Enumerable.Range(0, Truth.Count).MinBy(i => Distance(i, star));
            var distance = Distance(best, star);
            if (distance > within)
            {
                wrong++;
                continue;
            }

            hits.Add(best);
            if (star.SignalToNoise >= leastSignalToNoise)
            {
                squares += distance * distance / 2.0;
                pulls += distance * distance / 2.0 / (star.PositionErrorPx * star.PositionErrorPx);
                measured++;
            }
        }

        return (hits.Count, wrong, Math.Sqrt(squares / measured), Math.Sqrt(pulls / measured));
    }

    private double Distance(int star, FoundStar found) =>
        double.Hypot(Truth[star].X - found.Position.X, Truth[star].Y - found.Position.Y);
}

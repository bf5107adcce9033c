using Framing.Catalogue;
using Framing.Sky;

namespace Framing.Solving.Tests;

/// <summary>
/// Makes lists of detections as a star finder might: catalogue stars with losses, noise, distortion and false ones among
/// them. Its projection is its own plain trigonometry; it shares nothing with the solver.
/// </summary>
/// <remarks>
/// Losses 0 to 50 %, 0 to 200 false detections of which at most 10 among the 50 brightest, places off by 0.2 px along each
/// axis, distortion up to 5 px at the corner, both parities, any turn, brightness off by 0.2 mag, any depth.
/// </remarks>
internal sealed class StarListMaker(int seed)
{
    private const double Degree = Math.PI / 180.0;

    private static readonly (int Width, int Height)[] Sizes =
    [
        (4144, 2822),
        (6248, 4176),
        (2072, 1411),
        (3008, 3008),
        (1920, 1080),
        (1024, 768),
    ];

    private readonly Random random = new(seed);

    /// <summary>A list of a random field.</summary>
    /// <param name="leastField">Least width in degrees.</param>
    /// <param name="mostField">Largest width in degrees.</param>
    /// <param name="leastStars">At least so many real stars.</param>
    /// <param name="mostStars">At most so many.</param>
    /// <param name="withFalse">False for real stars alone.</param>
    public StarList Make(
        double leastField,
        double mostField,
        int leastStars = 12,
        int mostStars = int.MaxValue,
        bool withFalse = true
    )
    {
        while (true)
        {
            var list = Draw(leastField, mostField, mostStars, withFalse);
            if (list.RealStars >= leastStars)
            {
                return list;
            }
        }
    }

    /// <summary>A list of points that are no stars: evenly random, or a field of another sky.</summary>
    public StarList MakeNonsense(bool anotherSky)
    {
        var list = Make(1.5, 20.0);
        var points = list
            .Detections.Select(star => new DetectedStar(
                anotherSky ? Bent(star.Position, list) : Anywhere(list.Width, list.Height),
                star.Flux
            ))
            .ToList();
        return list with { Detections = points, RealStars = 0 };
    }

    public double Uniform(double from, double to) => from + ((to - from) * random.NextDouble());

    /// <summary>A real field pulled out of shape: its clumps and gaps stay, no figure of its stars does.</summary>
    private PixelPosition Bent(PixelPosition place, StarList list)
    {
        double x = place.X / list.Width,
            y = place.Y / list.Height;
        var pulledX = Math.Pow(x, 1.25) + (0.02 * Math.Sin(7.0 * y)) + (0.01 * Normal());
        var pulledY = Math.Pow(y, 0.85) + (0.02 * Math.Sin(9.0 * x)) + (0.01 * Normal());
        return new(
            Math.Clamp(pulledX, 0.0, 1.0) * list.Width,
            Math.Clamp(pulledY, 0.0, 1.0) * list.Height
        );
    }

    private StarList Draw(double leastField, double mostField, int mostStars, bool withFalse)
    {
        var (width, height) = Sizes[random.Next(Sizes.Length)];
        var field = leastField * Math.Pow(mostField / leastField, random.NextDouble());
        var rightAscension = Uniform(0.0, 360.0);
        var declination = Math.Asin(Uniform(-1.0, 1.0)) / Degree;
        var up = Uniform(0.0, 360.0);
        var mirrored = random.Next(2) == 1;
        var year = Uniform(2015.0, 2035.0);
        var radiansPerPixel = 2.0 * Math.Tan(0.5 * field * Degree) / width;
        var losses = Uniform(0.0, 0.5);
        var corner = Uniform(-5.0, 5.0);
        var half = 0.5 * double.Hypot(width, height);
        var bend = corner / (half * half * half);

        var centre = SkyDirection.FromDegrees(rightAscension, declination);
        var stars = StarCatalogue.Embedded.InCone(
            centre,
            Angle.FromRadians(Math.Atan(1.02 * half * radiansPerPixel)),
            new() { JulianYear = year }
        );
        var seen = new List<(PixelPosition Place, double Magnitude)>();
        var depth = random.Next(16, Math.Max(17, (int)Math.Min(stars.Count, 1500.0)));
        if (random.Next(2) == 0)
        {
            depth = (int)(16 * Math.Pow(Math.Max(stars.Count, 16) / 16.0, random.NextDouble()));
        }

        foreach (var star in stars)
        {
            var (x, y) = Project(star.At(year), rightAscension, declination, up, mirrored);
            (x, y) = (x / radiansPerPixel, y / radiansPerPixel);
            var pull = 1.0 + (bend * ((x * x) + (y * y)));
            (x, y) = (x * pull, y * pull);
            if (Math.Abs(x) > 0.5 * width || Math.Abs(y) > 0.5 * height || depth-- <= 0)
            {
                continue;
            }

            if (random.NextDouble() < losses)
            {
                continue;
            }

            seen.Add(
                (
                    new(
                        x + (0.5 * (width + 1)) + (0.2 * Normal()),
                        y + (0.5 * (height + 1)) + (0.2 * Normal())
                    ),
                    star.VMagnitude + (0.2 * Normal())
                )
            );
            if (seen.Count == mostStars)
            {
                break;
            }
        }

        return new(
            WithFalse(seen, width, height, withFalse ? random.Next(0, 201) : 0),
            width,
            height,
            seen.Count,
            centre,
            Angle.FromRadians(radiansPerPixel),
            up,
            mirrored,
            year
        );
    }

    /// <summary>Standard coordinates, turned into the frame: y along the position angle, x to its right or left.</summary>
    private static (double X, double Y) Project(
        SkyDirection star,
        double rightAscension,
        double declination,
        double up,
        bool mirrored
    )
    {
        var difference = star.RightAscension.Radians - (rightAscension * Degree);
        var (sinDec, cosDec) = Math.SinCos(star.Declination.Radians);
        var (sin0, cos0) = Math.SinCos(declination * Degree);
        var cosine = (sin0 * sinDec) + (cos0 * cosDec * Math.Cos(difference));
        var xi = cosDec * Math.Sin(difference) / cosine;
        var eta = ((cos0 * sinDec) - (sin0 * cosDec * Math.Cos(difference))) / cosine;
        var (sinUp, cosUp) = Math.SinCos(up * Degree);
        var along = (xi * sinUp) + (eta * cosUp);

        // North up and unmirrored, east is to the left.
        var across = (eta * sinUp) - (xi * cosUp);
        return (mirrored ? -across : across, along);
    }

    /// <summary>Adds false detections: at most ten among the fifty brightest, the others fainter.</summary>
    private List<DetectedStar> WithFalse(
        List<(PixelPosition Place, double Magnitude)> seen,
        int width,
        int height,
        int all
    )
    {
        var bright = Math.Min(all, random.Next(0, 11));
        var magnitudes = seen.Select(star => star.Magnitude).Order().ToArray();
        var list = seen.ConvertAll(star => new DetectedStar(star.Place, Flux(star.Magnitude)));
        var faintest = magnitudes.Length == 0 ? 10.0 : magnitudes[^1];
        var brightest = magnitudes.Length == 0 ? 5.0 : magnitudes[0];

        // Of the fifty brightest, as many as there are real ones beside the false.
        var fiftieth = magnitudes.Length > 50 - bright ? magnitudes[50 - bright - 1] : faintest;
        for (var i = 0; i < all; i++)
        {
            var magnitude =
                i < bright
                    ? Uniform(brightest, fiftieth)
                    : Uniform(fiftieth, Math.Max(fiftieth, faintest) + 1.5);
            list.Add(new(Anywhere(width, height), Flux(magnitude)));
        }

        return [.. list.OrderBy(star => star.Position.X)];
    }

    private PixelPosition Anywhere(int width, int height) =>
        new(Uniform(0.5, width + 0.5), Uniform(0.5, height + 0.5));

    private static double Flux(double magnitude) => Math.Pow(10.0, -0.4 * (magnitude - 15.0));

    private double Normal() =>
        Math.Sqrt(-2.0 * Math.Log(1.0 - random.NextDouble()))
        * Math.Cos(Math.Tau * random.NextDouble());
}

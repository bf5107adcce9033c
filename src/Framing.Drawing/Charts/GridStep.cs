using System.Globalization;

namespace Framing.Drawing;

/// <summary>A round step between lines of right ascension or declination, and how its values are written.</summary>
/// <param name="Units">The step in seconds: of time for right ascension, of arc for declination.</param>
internal readonly record struct GridStep(int Units)
{
    private static readonly int[] Times =
    [
        1,
        2,
        5,
        10,
        20,
        30,
        60,
        120,
        300,
        600,
        1200,
        1800,
        3600,
        7200,
        10800,
    ];

    private static readonly int[] Arcs =
    [
        5,
        10,
        20,
        30,
        60,
        120,
        300,
        600,
        1200,
        1800,
        3600,
        7200,
        18000,
        36000,
        72000,
    ];

    /// <summary>The smallest round step of right ascension that is not less than some seconds of time; at most 3h.</summary>
    public static GridStep OfTime(double atLeastSeconds) => new(Smallest(Times, atLeastSeconds));

    /// <summary>The smallest round step of declination that is not less than some seconds of arc; at most 20°.</summary>
    public static GridStep OfArc(double atLeastArcseconds) =>
        new(Smallest(Arcs, atLeastArcseconds));

    /// <summary>A right ascension in seconds of time, as fine as the step needs: 5h, 5h 36m, 5h 36m 20s.</summary>
    public string WriteTime(int seconds)
    {
        var whole = ((seconds % 86400) + 86400) % 86400;
        var (hours, minutes, rest) = (whole / 3600, whole / 60 % 60, whole % 60);
        return Units switch
        {
            >= 3600 => string.Create(CultureInfo.InvariantCulture, $"{hours}h"),
            >= 60 => string.Create(CultureInfo.InvariantCulture, $"{hours}h {minutes:00}m"),
            _ => string.Create(CultureInfo.InvariantCulture, $"{hours}h {minutes:00}m {rest:00}s"),
        };
    }

    /// <summary>A declination in seconds of arc, as fine as the step needs: +61°, +61° 20′, +61° 20′ 30″.</summary>
    public string WriteArc(int arcseconds)
    {
        var sign = arcseconds switch
        {
            > 0 => "+",
            < 0 => "−",
            _ => string.Empty,
        };
        var whole = Math.Abs(arcseconds);
        var (degrees, minutes, rest) = (whole / 3600, whole / 60 % 60, whole % 60);
        return Units switch
        {
            >= 3600 => string.Create(CultureInfo.InvariantCulture, $"{sign}{degrees}°"),
            >= 60 => string.Create(CultureInfo.InvariantCulture, $"{sign}{degrees}° {minutes:00}′"),
            _ => string.Create(
                CultureInfo.InvariantCulture,
                $"{sign}{degrees}° {minutes:00}′ {rest:00}″"
            ),
        };
    }

    private static int Smallest(int[] steps, double least) =>
        Array.Find(steps, step => step >= least) is var found and > 0 ? found : steps[^1];
}

namespace Framing.Imaging;

/// <summary>How stars are looked for. The default serves for frames of any rig.</summary>
public sealed record StarFinderSettings
{
    /// <summary>The usual settings.</summary>
    public static StarFinderSettings Usual { get; } = new();

    /// <summary>How far a star must stand above the noise, in sigma of its smoothed light; 3 to 100.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of its range.</exception>
    public double Threshold
    {
        get;
        init =>
            field = value is >= 3.0 and <= 100.0
                ? value
                : throw new ArgumentOutOfRangeException(
                    nameof(value),
                    value,
                    "A threshold is 3 to 100 sigma."
                );
    } = 5.5;

    /// <summary>The most stars to measure, the brightest ones; 1 or more.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Less than 1.</exception>
    public int MostStars
    {
        get;
        init =>
            field =
                value >= 1
                    ? value
                    : throw new ArgumentOutOfRangeException(
                        nameof(value),
                        value,
                        "At least one star is looked for."
                    );
    } = 2000;

    /// <summary>Whether the pixels stand under a colour filter (a Bayer pattern); null to see it from the samples.</summary>
    public bool? ColourFilter { get; init; }
}

using Framing.Sky;

namespace Framing.Nights;

/// <summary>The dark time of a night, as dark as it is wished or else as dark as the night becomes.</summary>
/// <param name="Night">The night.</param>
/// <param name="SunBelow">The altitude below which the Sun's centre stays in it: -18°, -12° or -6°.</param>
/// <param name="IsAsWished">False where the night does not become as dark as wished.</param>
/// <param name="Stretches">The stretches by time; none where the Sun stays above -6°.</param>
public sealed record DarkTime(
    NightOfSun Night,
    Angle SunBelow,
    bool IsAsWished,
    IReadOnlyList<UtcInterval> Stretches
)
{
    /// <summary>All stretches together.</summary>
    public TimeSpan Length =>
        Stretches.Aggregate(TimeSpan.Zero, (sum, stretch) => sum + stretch.Length);

    /// <summary>The dark time of a night.</summary>
    /// <param name="night">The night.</param>
    /// <param name="wished">The altitude below which the Sun should stay: -18°, -12° or -6°.</param>
    /// <returns>
    /// The stretches in which it does; where there are none those of the next brighter twilight, down to civil twilight.
    /// </returns>
    public static DarkTime Of(NightOfSun night, Angle wished)
    {
        ArgumentNullException.ThrowIfNull(night);
        (double Degrees, IReadOnlyList<UtcInterval> Stretches)[] levels =
        [
            (-18.0, night.Dark),
            (-12.0, night.BelowNautical),
            (-6.0, night.BelowCivil),
        ];
        var asWished = true;
        foreach (var (degrees, stretches) in levels)
        {
            if (degrees < wished.Degrees - 0.5)
            {
                continue;
            }

            if (stretches.Count > 0)
            {
                return new(night, Angle.FromDegrees(degrees), asWished, stretches);
            }

            asWished = false;
        }

        return new(night, Angle.FromDegrees(levels[^1].Degrees), IsAsWished: false, []);
    }
}

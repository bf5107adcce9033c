using Framing.Sky;

namespace Framing.Nights;

/// <summary>One night at a site: from one local mean noon to the next, named for the date of its evening.</summary>
public sealed class NightOfSun
{
    private const double BarelyDegrees = 0.1;

    private static readonly Angle SetAltitude = Angle.FromDegrees(-0.833);

    private NightOfSun(ObservingSite site, DateOnly evening)
    {
        Site = site;
        Evening = evening;
        Start =
            evening.ToDateTime(new(12, 0), DateTimeKind.Utc)
            - TimeSpan.FromDays(site.Longitude.Degrees / 360.0);
        End = Start.AddDays(1.0);
        var hours = RiseAndSet.Hours(site, Start, End);
        var (lowest, highest) = Crossings.Extremes(
            utc => hours.SunAltitude(utc).Degrees,
            Start,
            End
        );
        LowestSun = Angle.FromDegrees(lowest);
        HighestSun = Angle.FromDegrees(highest);
        SunDown = RiseAndSet.SunBelow(hours, SetAltitude, Start, End);
        BelowCivil = RiseAndSet.SunBelow(hours, Angle.FromDegrees(-6.0), Start, End);
        BelowNautical = RiseAndSet.SunBelow(hours, Angle.FromDegrees(-12.0), Start, End);
        Dark = RiseAndSet.SunBelow(hours, Angle.FromDegrees(-18.0), Start, End);
    }

    /// <summary>The site.</summary>
    public ObservingSite Site { get; }

    /// <summary>The date at local mean noon before the night.</summary>
    public DateOnly Evening { get; }

    /// <summary>Local mean noon before the night, UTC.</summary>
    public DateTime Start { get; }

    /// <summary>Local mean noon after it, UTC.</summary>
    public DateTime End { get; }

    /// <summary>When the Sun is down: its centre below -0.833° (34′ of refraction and 16′ of radius).</summary>
    public IReadOnlyList<UtcInterval> SunDown { get; }

    /// <summary>When civil twilight is over: the Sun's centre below -6°.</summary>
    public IReadOnlyList<UtcInterval> BelowCivil { get; }

    /// <summary>When nautical twilight is over: the Sun's centre below -12°.</summary>
    public IReadOnlyList<UtcInterval> BelowNautical { get; }

    /// <summary>When it is astronomically dark: the Sun's centre below -18°.</summary>
    public IReadOnlyList<UtcInterval> Dark { get; }

    /// <summary>The lowest true altitude of the Sun's centre.</summary>
    public Angle LowestSun { get; }

    /// <summary>The highest true altitude of the Sun's centre.</summary>
    public Angle HighestSun { get; }

    /// <summary>True when the Sun does not rise between the two noons.</summary>
    public bool IsPolarNight => HighestSun <= SetAltitude;

    /// <summary>How dark it becomes.</summary>
    public DarknessLevel Darkness =>
        LowestSun.Degrees switch
        {
            < -18.0 - BarelyDegrees => DarknessLevel.Dark,
            < -18.0 => DarknessLevel.BarelyDark,
            < -12.0 => DarknessLevel.AstronomicalTwilight,
            < -6.0 => DarknessLevel.NauticalTwilight,
            < -0.833 => DarknessLevel.CivilTwilight,
            _ => DarknessLevel.MidnightSun,
        };

    /// <summary>The night in words, without a full stop.</summary>
    public string Words => (IsPolarNight ? "polar night, the Sun does not rise; " : "") + DarkWords;

    private string DarkWords =>
        Darkness switch
        {
            DarknessLevel.Dark => "astronomically dark",
            DarknessLevel.BarelyDark => "barely dark: the Sun goes just below -18°",
            DarknessLevel.AstronomicalTwilight =>
                "no astronomical darkness: the Sun stays above -18°",
            DarknessLevel.NauticalTwilight => "no nautical darkness: the Sun stays above -12°",
            DarknessLevel.CivilTwilight =>
                "no darkness: civil twilight lasts, the Sun stays above -6°",
            _ => "no night: the Sun does not set",
        };

    /// <summary>The date of the evening that a moment belongs to: after midnight it is still the last evening's night.</summary>
    /// <param name="longitude">The site's longitude, east positive.</param>
    /// <param name="utc">The moment, UTC.</param>
    /// <returns>The date at local mean noon before the moment.</returns>
    public static DateOnly EveningOf(Angle longitude, DateTime utc) =>
        DateOnly.FromDateTime(utc.AddDays((longitude.WrappedSigned.Degrees / 360.0) - 0.5));

    /// <summary>The night of an evening.</summary>
    /// <param name="site">The site.</param>
    /// <param name="evening">The date of its evening, years 1902 to 2198.</param>
    /// <returns>The night.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The date is not covered.</exception>
    public static NightOfSun Of(ObservingSite site, DateOnly evening)
    {
        ArgumentNullException.ThrowIfNull(site);
        return evening.Year is >= 1902 and <= 2198
            ? new(site, evening)
            : throw new ArgumentOutOfRangeException(
                nameof(evening),
                evening,
                "Nights are known for the years 1902 to 2198."
            );
    }
}

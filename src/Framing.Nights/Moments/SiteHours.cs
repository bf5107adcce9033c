using System.Globalization;
using Framing.Sky;

namespace Framing.Nights;

/// <summary>The sky over one site through some hours or days, quick to ask again and again.</summary>
/// <remarks>
/// <para>
/// What moves slowly (the Sun, the Moon about the Earth, the frame of date) is worked out by <see cref="SiteMoment"/>'s
/// methods at eight times of each day looked at and joined by Chebyshev polynomials; the turning of the Earth is exact.
/// Against <see cref="SiteMoment"/>: Sun and stars within 0.001″, the Moon within 0.01″ and 0.1 km; 0.6″ for the Moon on a day
/// with a leap second.
/// </para>
/// <para>A day costs eight moments once, a place then some hundred nanoseconds. Safe to use from several threads.</para>
/// </remarks>
public sealed class SiteHours
{
    private const double DaysEach = 1.0;

    private readonly SiteDay?[] days;
    private readonly double fromAxis;
    private readonly double overEquator;
    private readonly double sinLatitude;
    private readonly double cosLatitude;

    /// <summary>Makes the sky over a site through a stretch of time.</summary>
    /// <param name="site">The site.</param>
    /// <param name="start">Its begin, UTC.</param>
    /// <param name="end">Its end, UTC, later than the begin, at most 400 days.</param>
    /// <exception cref="ArgumentOutOfRangeException">The stretch is turned about, too long, or outside of the years 1901 to 2199.</exception>
    /// <exception cref="ArgumentException">The kind is not UTC.</exception>
    public SiteHours(ObservingSite site, DateTime start, DateTime end)
    {
        ArgumentNullException.ThrowIfNull(site);
        if (start.Kind != DateTimeKind.Utc || end.Kind != DateTimeKind.Utc)
        {
            throw new ArgumentException("The times have to be UTC.", nameof(start));
        }

        if (
            end <= start
            || (end - start).TotalDays > 400.0
            || !SiteMoment.Covers(start)
            || !SiteMoment.Covers(end)
        )
        {
            throw new ArgumentOutOfRangeException(
                nameof(end),
                end,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"From {start:o} on at most 400 days can be looked at, in the years 1901 to 2199."
                )
            );
        }

        (Site, Start, End) = (site, start, end);
        days = new SiteDay?[(int)Math.Ceiling((end - start).TotalDays / DaysEach)];
        (fromAxis, overEquator) = site.FromEarthCentre;
        (sinLatitude, cosLatitude) = Math.SinCos(site.Latitude.Radians);
    }

    /// <summary>The site.</summary>
    public ObservingSite Site { get; }

    /// <summary>The first time that can be asked for, UTC.</summary>
    public DateTime Start { get; }

    /// <summary>The last time that can be asked for, UTC.</summary>
    public DateTime End { get; }

    /// <summary>The Sun's centre as from the Earth's centre; see <see cref="SiteMoment.Sun"/>.</summary>
    /// <param name="utc">The time, from <see cref="Start"/> to <see cref="End"/>.</param>
    /// <returns>The place.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside.</exception>
    public HorizontalPlace Sun(DateTime utc)
    {
        var day = Day(utc, out var x);
        return Place(day.Sun(x), LocalTurn(day, utc, x), fromAxis: 0.0);
    }

    /// <summary>The true altitude of the Sun's centre.</summary>
    /// <param name="utc">The time, from <see cref="Start"/> to <see cref="End"/>.</param>
    /// <returns>The altitude without air.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside.</exception>
    public Angle SunAltitude(DateTime utc)
    {
        var day = Day(utc, out var x);
        return Altitude(day.Sun(x), LocalTurn(day, utc, x), 0.0);
    }

    /// <summary>The Moon as the observer sees it; see <see cref="SiteMoment.Moon"/>.</summary>
    /// <param name="utc">The time, from <see cref="Start"/> to <see cref="End"/>.</param>
    /// <returns>The Moon.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside.</exception>
    public MoonSight Moon(DateTime utc)
    {
        var day = Day(utc, out var x);
        var turn = LocalTurn(day, utc, x);
        var (sin, cos) = Math.SinCos(turn);
        var seen = day.Moon(x) - new Vector3D(fromAxis * cos, fromAxis * sin, overEquator);
        return new(
            Place(seen, turn, fromAxis: 0.0),
            SkyDirection.FromVector(seen),
            seen.Length,
            day.Lit(x)
        );
    }

    /// <summary>Follows a direction over the sky.</summary>
    /// <param name="icrs">The ICRS direction of something far away, at its place at this time.</param>
    /// <returns>The path; ask it for places.</returns>
    /// <exception cref="ArgumentException">The direction is <c>default</c>, which points nowhere.</exception>
    public StarPath Follow(SkyDirection icrs) =>
        icrs.IsDefault
            ? throw new ArgumentException(
                "The direction points nowhere (it is default).",
                nameof(icrs)
            )
            : new(this, icrs, days.Length);

    internal SiteDay Day(DateTime utc, out double x)
    {
        if (utc < Start || utc > End)
        {
            throw new ArgumentOutOfRangeException(
                nameof(utc),
                utc,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The sky was made for {Start:o} to {End:o}."
                )
            );
        }

        var since = (utc - Start).TotalDays / DaysEach;
        var number = Math.Min((int)since, days.Length - 1);
        x = (2.0 * (since - number)) - 1.0;
        return days[number] ??= new(number, Start.AddDays(number * DaysEach), DaysEach);
    }

    internal double LocalTurn(SiteDay day, DateTime utc, double x) =>
        SiderealTime.MeanRadians(utc) + day.Equinoxes(x) + Site.Longitude.Radians;

    internal HorizontalPlace PlaceOfStar(Vector3D ofDate, double turn) =>
        Place(ofDate, turn, fromAxis);

    internal Angle AltitudeOfStar(Vector3D ofDate, double turn) => Altitude(ofDate, turn, fromAxis);

    private HorizontalPlace Place(Vector3D ofDate, double turn, double fromAxis)
    {
        var (sin, cos) = Math.SinCos(turn);
        return SiteMoment.FromHourAxes(
            Site,
            (cos * ofDate.X) + (sin * ofDate.Y),
            (cos * ofDate.Y) - (sin * ofDate.X) + (fromAxis * SiteMoment.TurningAberration),
            ofDate.Z
        );
    }

    private Angle Altitude(Vector3D ofDate, double turn, double fromAxis)
    {
        var (sin, cos) = Math.SinCos(turn);
        var meridian = (cos * ofDate.X) + (sin * ofDate.Y);
        var east = (cos * ofDate.Y) - (sin * ofDate.X) + (fromAxis * SiteMoment.TurningAberration);
        var up = (sinLatitude * ofDate.Z) + (cosLatitude * meridian);
        var north = (cosLatitude * ofDate.Z) - (sinLatitude * meridian);
        return Angle.FromRadians(Math.Atan2(up, Math.Sqrt((north * north) + (east * east))));
    }
}

using System.Globalization;
using Framing.Sky;

namespace Framing.Nights;

/// <summary>The sky over one site at one time.</summary>
/// <remarks>
/// UT1 is taken as UTC and the pole does not wander. Stars within 0.1″ of ERFA 2.0.0 under the same rules, with the
/// aberration of the Earth's turning in it.
/// </remarks>
public sealed class SiteMoment
{
    // Speed of the ground over that of light, radians for each km from the axis: 7.292115e-5 rad/s (IERS) over 299792.458 km/s.
    internal const double TurningAberration = 7.292115e-5 / 299_792.458;

    private readonly OfDateFrame frame;
    private readonly Angle localSiderealTime;
    private readonly double fromAxis;
    private readonly double overEquator;

    private SiteMoment(ObservingSite site, DateTime utc)
    {
        Site = site;
        Utc = utc;
        frame = OfDateFrame.At(TerrestrialTime.FromUtc(utc));
        localSiderealTime = (SiderealTime.GreenwichApparent(utc, frame) + site.Longitude).Wrapped;
        (fromAxis, overEquator) = site.FromEarthCentre;
    }

    /// <summary>The site.</summary>
    public ObservingSite Site { get; }

    /// <summary>The time in UTC.</summary>
    public DateTime Utc { get; }

    /// <summary>Local apparent sidereal time: the right ascension (of date) on the meridian, 0 to 360°.</summary>
    public Angle LocalSiderealTime => localSiderealTime;

    /// <summary>The frame of date of this time.</summary>
    public OfDateFrame Frame => frame;

    /// <summary>The Sun's centre as from the Earth's centre, as almanacs give it: its parallax, at most 9″, is left out.</summary>
    public HorizontalPlace Sun => Place(frame.Sun, fromAxis: 0.0);

    /// <summary>The Moon as the observer sees it.</summary>
    public MoonSight Moon => MoonOf(MoonPlace.At(frame));

    /// <summary>True for times that can be used: the years 1901 to 2199.</summary>
    /// <param name="utc">The time.</param>
    /// <returns>Whether <see cref="Of"/> takes it.</returns>
    public static bool Covers(DateTime utc) => utc.Year is >= 1901 and <= 2199;

    /// <summary>The sky over a site at a time.</summary>
    /// <param name="site">The site.</param>
    /// <param name="utc">The time, years 1901 to 2199; its kind must be UTC.</param>
    /// <returns>The sky.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is not covered; ask <see cref="Covers"/> first.</exception>
    /// <exception cref="ArgumentException">The kind is not UTC.</exception>
    public static SiteMoment Of(ObservingSite site, DateTime utc)
    {
        ArgumentNullException.ThrowIfNull(site);
        return Covers(utc)
            ? new(site, utc)
            : throw new ArgumentOutOfRangeException(
                nameof(utc),
                utc.ToString("o", CultureInfo.InvariantCulture),
                "The sky over a site is known for the years 1901 to 2199."
            );
    }

    /// <summary>Where an ICRS (J2000) direction stands.</summary>
    /// <param name="icrs">The ICRS direction of something far away, at its place at this time.</param>
    /// <returns>The place.</returns>
    /// <exception cref="ArgumentException">The direction is <c>default</c>, which points nowhere.</exception>
    public HorizontalPlace See(SkyDirection icrs) => SeeOfDate(frame.ToOfDate(icrs));

    /// <summary>Where a direction against the true equator and equinox of date stands.</summary>
    /// <param name="ofDate">The apparent direction of something far away, from the Earth's centre.</param>
    /// <returns>The place.</returns>
    /// <exception cref="ArgumentException">The direction is <c>default</c>, which points nowhere.</exception>
    public HorizontalPlace SeeOfDate(SkyDirection ofDate) =>
        ofDate.IsDefault
            ? throw new ArgumentException(
                "The direction points nowhere (it is default).",
                nameof(ofDate)
            )
            : Place(ofDate, fromAxis);

    private MoonSight MoonOf(MoonPlace moon)
    {
        var (sin, cos) = Math.SinCos(localSiderealTime.Radians);
        var observer = new Vector3D(fromAxis * cos, fromAxis * sin, overEquator);
        var seen = (moon.Direction.Vector * moon.DistanceKilometres) - observer;
        var direction = SkyDirection.FromVector(seen);
        return new(
            Place(direction, fromAxis: 0.0),
            direction,
            seen.Length,
            moon.IlluminatedFraction
        );
    }

    private HorizontalPlace Place(SkyDirection ofDate, double fromAxis)
    {
        var (sin, cos) = Math.SinCos(localSiderealTime.Radians);
        var v = ofDate.Vector;
        return FromHourAxes(
            Site,
            (cos * v.X) + (sin * v.Y),
            (cos * v.Y) - (sin * v.X) + (fromAxis * TurningAberration),
            v.Z
        );
    }

    /// <summary>The place of a unit vector with parts towards the meridian on the equator, the east point and the pole.</summary>
    internal static HorizontalPlace FromHourAxes(
        ObservingSite site,
        double meridian,
        double east,
        double pole
    )
    {
        var (sinLatitude, cosLatitude) = Math.SinCos(site.Latitude.Radians);
        var up = (sinLatitude * pole) + (cosLatitude * meridian);
        var north = (cosLatitude * pole) - (sinLatitude * meridian);
        var altitude = Angle.FromRadians(Math.Atan2(up, double.Hypot(north, east)));

        // The zenith's position angle, without dividing by the cosine of the latitude or of the declination.
        var parallactic = Angle.FromRadians(
            Math.Atan2(
                -cosLatitude * east,
                (sinLatitude * ((meridian * meridian) + (east * east)))
                    - (cosLatitude * pole * meridian)
            )
        );
        return new(
            altitude,
            altitude + Refraction.AtTrue(altitude, site.Air),
            Angle.FromRadians(Math.Atan2(east, north)).Wrapped,
            Angle.FromRadians(Math.Atan2(-east, meridian)),
            parallactic
        );
    }
}

namespace Framing.Sky;

/// <summary>
/// The true equator and equinox of one moment: what a mount that expects coordinates "of date" is told, and where its
/// axis points.
/// </summary>
/// <remarks>
/// <para>
/// The way from ICRS: bending of light by the Sun, annual aberration, offset of ICRS and precession (IAU 2006), nutation
/// (IAU 2000B). Parallax, the observer's own place on the Earth (daily aberration up to 0.32″) and refraction are not in it.
/// Proper motion comes first, see <see cref="ProperMotion"/>.
/// </para>
/// <para>
/// Against ERFA 2.0.0 with the full IAU 2006/2000A: within 0.003″ over 1990–2060 and 0.005″ over 1900–2200; within 0.02″
/// closer than 5° to the Sun. Within 5′ of the Sun's centre bending is held down, as in ERFA.
/// </para>
/// <para>
/// Built once for a time (microseconds); a direction then costs some tens of nanoseconds. Safe to use from several threads.
/// </para>
/// </remarks>
public sealed class OfDateFrame
{
    /// <summary>The first Julian year that is covered.</summary>
    public const double EarliestJulianYear = 1900.0;

    /// <summary>The last Julian year that is covered.</summary>
    public const double LatestJulianYear = 2200.0;

    // au per Julian year: metres a second × seconds a year ÷ metres an au (IAU 2012 resolution B2).
    private const double LightSpeed = 299_792_458.0 * (365.25 * 86400.0) / 149_597_870_700.0;

    private readonly Rotation toOfDate;
    private readonly Vector3D velocity;
    private readonly LightDeflection deflection;

    private OfDateFrame(TerrestrialTime time)
    {
        Time = time;
        var nutation = Nutation.At(time);
        toOfDate = Precession.ToOfDate(time, nutation);
        NutationInLongitude = nutation.InLongitude;
        Obliquity = Precession.MeanObliquity(time) + nutation.InObliquity;
        var earth = EarthMotion.At(time);
        velocity = earth.Velocity * (1.0 / LightSpeed);
        var distance = earth.FromSun.Length;
        deflection = new(earth.FromSun * (1.0 / distance), distance);

        // The Sun is seen where it was when its light left: it has moved against the barycentre since.
        var sunThen = -earth.FromSun - (earth.SunVelocity * (distance / LightSpeed));
        Sun = SkyDirection.FromVector(toOfDate.Apply(Aberration.Shift(sunThen.Unit(), velocity)));
        PoleOfDate = SkyDirection.FromVector(toOfDate.Z);
    }

    /// <summary>The moment the frame stands for.</summary>
    public TerrestrialTime Time { get; }

    /// <summary>ICRS direction of the true north pole of date: where the axis of a well set-up mount points.</summary>
    public SkyDirection PoleOfDate { get; }

    /// <summary>The Sun's centre as seen from the Earth's centre, of date (apparent place), within 3″.</summary>
    public SkyDirection Sun { get; }

    /// <summary>
    /// Nutation in longitude: how far the true equinox of date stands west of the mean one along the ecliptic, at most 20″
    /// either way.
    /// </summary>
    public Angle NutationInLongitude { get; }

    /// <summary>True obliquity of date: the angle between the ecliptic and the true equator, near 23.44°.</summary>
    public Angle Obliquity { get; }

    /// <summary>True when the frame can be built for a time: Julian years 1900 to 2200.</summary>
    /// <param name="time">The time.</param>
    /// <returns>Whether <see cref="At"/> takes it.</returns>
    public static bool Covers(TerrestrialTime time) =>
        time.JulianYear is >= EarliestJulianYear and <= LatestJulianYear;

    /// <summary>The frame of a moment.</summary>
    /// <param name="time">The moment, Julian years 1900 to 2200.</param>
    /// <returns>The frame.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is not covered; ask <see cref="Covers"/> first.</exception>
    public static OfDateFrame At(TerrestrialTime time) =>
        Covers(time)
            ? new(time)
            : throw new ArgumentOutOfRangeException(
                nameof(time),
                time,
                "Coordinates of date are known for the Julian years 1900 to 2200."
            );

    /// <summary>An ICRS (J2000) direction as coordinates of date.</summary>
    /// <param name="icrs">The ICRS direction of something far away, at its place at this time.</param>
    /// <returns>The apparent direction against the true equator and equinox of date, from the Earth's centre.</returns>
    /// <exception cref="ArgumentException">The direction is <c>default</c>, which points nowhere.</exception>
    public SkyDirection ToOfDate(SkyDirection icrs)
    {
        if (icrs.IsDefault)
        {
            throw NoDirection(nameof(icrs));
        }

        return SkyDirection.FromVector(
            toOfDate.Apply(Aberration.Shift(deflection.Bend(icrs.Vector), velocity))
        );
    }

    /// <summary>Coordinates of date as an ICRS (J2000) direction; undoes <see cref="ToOfDate"/> to 1e-9″.</summary>
    /// <param name="ofDate">The apparent direction against the true equator and equinox of date.</param>
    /// <returns>The ICRS direction.</returns>
    /// <exception cref="ArgumentException">The direction is <c>default</c>, which points nowhere.</exception>
    public SkyDirection ToIcrs(SkyDirection ofDate)
    {
        if (ofDate.IsDefault)
        {
            throw NoDirection(nameof(ofDate));
        }

        var seen = Aberration.Shift(toOfDate.Undo(ofDate.Vector), -velocity);
        return SkyDirection.FromVector(deflection.Straighten(seen));
    }

    /// <summary>
    /// How the north of date is turned against J2000 north at a place: the J2000 position angle of the true pole of date.
    /// </summary>
    /// <param name="icrs">The place, ICRS.</param>
    /// <returns>
    /// The position angle, near 0° or 360° away from the poles. Position angle of date = J2000 position angle minus this, but
    /// for aberration, which shifts the place against the pole: at most 0.006°/cos(declination).
    /// </returns>
    /// <exception cref="ArgumentException">The direction is <c>default</c>, which points nowhere.</exception>
    public PositionAngle NorthOfDateAt(SkyDirection icrs) =>
        icrs.IsDefault ? throw NoDirection(nameof(icrs)) : icrs.PositionAngleTo(PoleOfDate);

    private static ArgumentException NoDirection(string name) =>
        new("The direction points nowhere (it is default).", name);
}

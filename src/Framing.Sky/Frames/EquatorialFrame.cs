namespace Framing.Sky;

/// <summary>A frame in which a file states positions: ICRS, FK5 or FK4 of an equinox. It carries directions to ICRS and back.</summary>
/// <remarks>
/// <list type="number">
/// <item>FK5: precession of IAU 1976 to J2000, then the turn from FK5 to the Hipparcos frame, which is ICRS to within its
/// errors. FK5 of J2000 and ICRS differ by 0.02″.</item>
/// <item>FK4: elliptic aberration of its equinox taken off, Newcomb's precession to B1950, then the matrix of Murray with
/// the slow spin of FK4 up to the epoch of the observation. A star of FK4 has no proper motion in this: what is carried is
/// a place seen at that epoch.</item>
/// <item>Sources: Lieske and others 1977, A&amp;A 58, 1; Mignard and Froeschlé 2000, A&amp;A 354, 732; Standish 1982,
/// A&amp;A 115, 20; Murray 1989, A&amp;A 218, 325; checked against ERFA's pmat76, fk52h and fk45z, and astropy.</item>
/// </list>
/// </remarks>
public sealed class EquatorialFrame
{
    private readonly Func<SkyDirection, SkyDirection> toIcrs;
    private readonly Func<SkyDirection, SkyDirection> fromIcrs;
    private readonly bool isTurn;

    private EquatorialFrame(
        Func<SkyDirection, SkyDirection> toIcrs,
        Func<SkyDirection, SkyDirection> fromIcrs,
        bool isTurn
    ) => (this.toIcrs, this.fromIcrs, this.isTurn) = (toIcrs, fromIcrs, isTurn);

    /// <summary>ICRS itself.</summary>
    public static EquatorialFrame Icrs { get; } =
        new(direction => direction, direction => direction, isTurn: true);

    /// <summary>The mean equator and equinox of FK5.</summary>
    /// <param name="equinox">The equinox as a Julian year, 1500 to 2500.</param>
    /// <returns>The frame.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The year is out of its range.</exception>
    public static EquatorialFrame Fk5(double equinox)
    {
        RequireYear(equinox, nameof(equinox));
        var toEquinox = OlderPrecession.Iau1976(equinox) * Fk5Turn.Inverse;
        return new(
            direction => SkyDirection.FromVector(toEquinox.Undo(direction.Vector)),
            direction => SkyDirection.FromVector(toEquinox.Apply(direction.Vector)),
            isTurn: true
        );
    }

    /// <summary>The mean equator and equinox of FK4.</summary>
    /// <param name="equinox">The equinox as a Besselian year, 1500 to 2500.</param>
    /// <param name="epoch">The Besselian year of the observation, 1500 to 2500: FK4 turns against the sky by 0.5″ a century.</param>
    /// <param name="withEllipticTerms">True for catalogue places, which hold the elliptic part of aberration (FK4); false for FK4-NO-E.</param>
    /// <returns>The frame.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A year is out of its range.</exception>
    public static EquatorialFrame Fk4(double equinox, double epoch, bool withEllipticTerms = true)
    {
        RequireYear(equinox, nameof(equinox));
        RequireYear(epoch, nameof(epoch));
        var steps = new Fk4Steps(equinox, epoch, withEllipticTerms);
        return new(steps.ToIcrs, steps.FromIcrs, isTurn: false);
    }

    /// <summary>Carries a direction of this frame to ICRS.</summary>
    /// <param name="direction">A direction whose face counts in this frame.</param>
    /// <returns>The same place in ICRS.</returns>
    public SkyDirection ToIcrs(SkyDirection direction) => toIcrs(direction);

    /// <summary>Carries a direction of ICRS to this frame.</summary>
    /// <param name="direction">A direction in ICRS.</param>
    /// <returns>The same place in this frame.</returns>
    public SkyDirection FromIcrs(SkyDirection direction) => fromIcrs(direction);

    /// <summary>Carries world coordinates of this frame to ICRS.</summary>
    /// <param name="asWritten">World coordinates whose directions count in this frame.</param>
    /// <returns>World coordinates of the same pixels in ICRS. A tangent plane stays one, except from FK4.</returns>
    public WorldCoordinates ToIcrs(WorldCoordinates asWritten)
    {
        ArgumentNullException.ThrowIfNull(asWritten);
        return ReferenceEquals(this, Icrs) ? asWritten
            : !isTurn ? new CarriedWorldCoordinates(asWritten, this)
            : asWritten switch
            {
                TanWorldCoordinates tan => Turned(tan),
                ProjectedWorldCoordinates projected => projected.Carried(toIcrs),
                _ => new CarriedWorldCoordinates(asWritten, this),
            };
    }

    private TanWorldCoordinates Turned(TanWorldCoordinates tan)
    {
        // The plane keeps its axes; the new reference has an east and north of its own, turned against them.
        var centre = toIcrs(tan.ReferenceDirection);
        var north = toIcrs(SkyDirection.FromVector(tan.ReferenceDirection.North)).Vector;
        var (sin, cos) = (north.Dot(centre.East), north.Dot(centre.North));
        var m = tan.Matrix;
        return new(
            tan.ReferencePixel,
            centre,
            new(
                (cos * m.Cd11) + (sin * m.Cd21),
                (cos * m.Cd12) + (sin * m.Cd22),
                (cos * m.Cd21) - (sin * m.Cd11),
                (cos * m.Cd22) - (sin * m.Cd12)
            )
        );
    }

    private static void RequireYear(double year, string name)
    {
        if (!(year is >= 1500.0 and <= 2500.0))
        {
            throw new ArgumentOutOfRangeException(
                name,
                year,
                "Precession is known for years from 1500 to 2500."
            );
        }
    }
}

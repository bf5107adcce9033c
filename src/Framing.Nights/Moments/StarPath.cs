using Framing.Sky;

namespace Framing.Nights;

/// <summary>The way of something far away over a site's sky.</summary>
public sealed class StarPath
{
    private readonly SiteHours hours;
    private readonly Vector3D[]?[] days;

    internal StarPath(SiteHours hours, SkyDirection icrs, int count)
    {
        this.hours = hours;
        Icrs = icrs;
        days = new Vector3D[]?[count];
    }

    /// <summary>The ICRS direction.</summary>
    public SkyDirection Icrs { get; }

    /// <summary>The site.</summary>
    public ObservingSite Site => hours.Site;

    /// <summary>Where it stands.</summary>
    /// <param name="utc">The time, within the hours it was made for.</param>
    /// <returns>The place.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside.</exception>
    public HorizontalPlace At(DateTime utc)
    {
        var day = hours.Day(utc, out var x);
        return hours.PlaceOfStar(OfDate(day, x), hours.LocalTurn(day, utc, x));
    }

    /// <summary>Its true altitude.</summary>
    /// <param name="utc">The time, within the hours it was made for.</param>
    /// <returns>The altitude without air.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside.</exception>
    public Angle TrueAltitude(DateTime utc)
    {
        var day = hours.Day(utc, out var x);
        return hours.AltitudeOfStar(OfDate(day, x), hours.LocalTurn(day, utc, x));
    }

    /// <summary>By how much it stands above the skyline and a least altitude, as seen through the air.</summary>
    /// <param name="utc">The time, within the hours it was made for.</param>
    /// <param name="least">The least apparent altitude, whatever the skyline.</param>
    /// <returns>The clearance; negative below.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside.</exception>
    public Angle Clearance(DateTime utc, Angle least) =>
        hours.Site.Horizon.Clearance(At(utc), least);

    private Vector3D OfDate(SiteDay day, double x) =>
        Chebyshev.At(days[day.Number] ??= day.Star(Icrs), x);
}

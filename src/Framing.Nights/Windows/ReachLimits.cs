using Framing.Sky;

namespace Framing.Nights;

/// <summary>What keeps a telescope from a place of the sky, beside the skyline of its site.</summary>
public sealed record ReachLimits
{
    /// <summary>Nothing is shot below this apparent altitude, whatever the skyline.</summary>
    public Angle MinAltitude { get; init; }

    /// <summary>Nothing is shot closer to the zenith than this; 0 for no limit.</summary>
    public Angle ZenithLimit { get; init; }

    /// <summary>Nothing is shot beyond this declination of date, north or south; 90° for no limit.</summary>
    public Angle DeclinationLimit { get; init; } = Angle.FromDegrees(90.0);

    /// <summary>How long nothing is shot from a panel's passage of the upper meridian on; 0 for a mount that needs no pause there.</summary>
    public TimeSpan MeridianPause { get; init; }

    /// <summary>More than 0 where a place can be reached, less where it cannot; degrees.</summary>
    internal double Room(Horizon skyline, in HorizontalPlace place)
    {
        var room = skyline.Clearance(place, MinAltitude).Degrees;
        return ZenithLimit > Angle.Zero
            ? Math.Min(room, 90.0 - ZenithLimit.Degrees - place.Altitude.Degrees)
            : room;
    }
}

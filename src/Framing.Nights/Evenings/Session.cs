namespace Framing.Nights;

/// <summary>The time that an observer and all that draws power spend under the sky in one night.</summary>
/// <param name="From">When setting up begins, UTC; null where no site says when the night is.</param>
/// <param name="To">When the last flats are taken, UTC; null where no site says when the night is.</param>
/// <param name="Length">How long that is.</param>
public sealed record Session(DateTime? From, DateTime? To, TimeSpan Length)
{
    /// <summary>The session of a night: from sunset until the last panel is lost, and the flats after it.</summary>
    /// <param name="dark">The dark time.</param>
    /// <param name="lastClear">When the last panel is lost in the dark, UTC; null when none can be shot.</param>
    /// <param name="setup">The human's time before the first sub: where the Sun does not set it comes before the dark.</param>
    /// <param name="flats">The time for flats.</param>
    /// <returns>The session; setting up and flats alone when nothing can be shot.</returns>
    public static Session Of(DarkTime dark, DateTime? lastClear, TimeSpan setup, TimeSpan flats)
    {
        ArgumentNullException.ThrowIfNull(dark);
        var down = dark.Night.SunDown;
        var sunset = down is [{ HeldBefore: false, Start: var set }, ..] ? set : (DateTime?)null;
        if (lastClear is not { } last)
        {
            return new(sunset, sunset + setup + flats, setup + flats);
        }

        var from = sunset ?? dark.Stretches[0].Start - setup;
        var to = last + flats;
        return new(from, to, to - from);
    }
}

using System.Globalization;

namespace Framing.Nights;

/// <summary>What the clock at a site shows at one moment.</summary>
/// <param name="Utc">The moment, UTC.</param>
/// <param name="Local">Date and time on the clock; its kind is unspecified.</param>
/// <param name="Offset">Local time minus UTC.</param>
public readonly record struct LocalMoment(DateTime Utc, DateTime Local, TimeSpan Offset)
{
    /// <summary>The offset as it is written behind a time: +01:00, -09:30.</summary>
    public string OffsetText =>
        (Offset < TimeSpan.Zero ? "-" : "+")
        + Offset.ToString(
            Offset.Seconds == 0 ? "hh\\:mm" : "hh\\:mm\\:ss",
            CultureInfo.InvariantCulture
        );

    /// <summary>ISO 8601 with the offset: 2026-12-05T22:00:00+01:00.</summary>
    public string IsoText =>
        Local.ToString("yyyy-MM-dd'T'HH:mm:ss", CultureInfo.InvariantCulture) + OffsetText;
}

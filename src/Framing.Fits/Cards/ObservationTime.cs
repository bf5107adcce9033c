using System.Globalization;

namespace Framing.Fits;

/// <summary>Reads when a frame was taken.</summary>
/// <remarks>Source: FITS Standard 4.0, section 9.1.1: yyyy-mm-dd[Thh:mm:ss[.s...]] in UTC unless TIMESYS says otherwise.</remarks>
public static class ObservationTime
{
    /// <summary>The start of the exposure: DATE-OBS, else DATE-BEG, else MJD-OBS.</summary>
    /// <param name="header">The header.</param>
    /// <param name="warnings">Takes what keeps a value from being read, and a scale of time that is not UTC.</param>
    /// <returns>The start in UTC, to 100 ns; null when the header does not tell.</returns>
    public static DateTimeOffset? Start(FitsHeader header, ICollection<string> warnings)
    {
        ArgumentNullException.ThrowIfNull(header);
        ArgumentNullException.ThrowIfNull(warnings);
        if (
            header.Text("TIMESYS")?.Trim().ToUpperInvariant() is { Length: > 0 } scale
            && scale is not ("UTC" or "UT" or "GMT")
        )
        {
            warnings.Add($"TIMESYS = {scale}: times are read as if they were UTC.");
        }

        foreach (var keyword in (string[])["DATE-OBS", "DATE-BEG"])
        {
            if (header.Text(keyword) is not { } text || text.Trim().Length == 0)
            {
                continue;
            }

            // The older form keeps the time of day apart.
            if (
                !text.Contains('T', StringComparison.Ordinal)
                && header.Text("TIME-OBS") is { Length: > 0 } timeOfDay
                && TryParse($"{text.Trim()}T{timeOfDay.Trim()}", out var joined)
            )
            {
                return joined;
            }

            if (TryParse(text, out var time))
            {
                return time;
            }

            warnings.Add($"{keyword} = {text} is no time; yyyy-mm-ddThh:mm:ss would be right.");
        }

        // 0 and 88,069 are the modified Julian dates of 1858-11-17 and 2100-01-01.
        return header.Number("MJD-OBS") is { } days and > 0.0 and < 88_069.0
            ? new DateTimeOffset(1858, 11, 17, 0, 0, 0, TimeSpan.Zero).AddTicks(
                (long)Math.Round(days * TimeSpan.TicksPerDay)
            )
            : null;
    }

    /// <summary>Reads a date or a date with a time of day.</summary>
    /// <param name="text">"2026-02-17", "2026-02-17T21:04:05.25", a Z at the end is let pass.</param>
    /// <param name="time">The time in UTC; digits beyond 100 ns are rounded.</param>
    /// <returns>False when the text is no such time.</returns>
    public static bool TryParse(string? text, out DateTimeOffset time)
    {
        time = default;
        var parts = text?.Trim().TrimEnd('Z').Split('T') ?? [];
        if (parts.Length is not (1 or 2) || !TryDate(parts[0], out var date))
        {
            return false;
        }

        var ofDay = TimeSpan.Zero;
        if (parts.Length == 2 && !TryTimeOfDay(parts[1], out ofDay))
        {
            return false;
        }

        time = new DateTimeOffset(date, TimeSpan.Zero) + ofDay;
        return true;
    }

    private static bool TryDate(string text, out DateTime date) =>
        DateTime.TryParseExact(
            text,
            "yyyy-MM-dd",
            CultureInfo.InvariantCulture,
            DateTimeStyles.None,
            out date
        ) && date.Year is > 1600 and < 9000;

    private static bool TryTimeOfDay(string text, out TimeSpan ofDay)
    {
        ofDay = TimeSpan.Zero;
        var parts = text.Split(':');
        if (
            parts.Length is not (2 or 3)
            || !int.TryParse(
                parts[0],
                NumberStyles.None,
                CultureInfo.InvariantCulture,
                out var hours
            )
            || !int.TryParse(
                parts[1],
                NumberStyles.None,
                CultureInfo.InvariantCulture,
                out var minutes
            )
        )
        {
            return false;
        }

        var seconds = 0.0;
        if (
            parts.Length == 3
            && !double.TryParse(
                parts[2],
                NumberStyles.AllowDecimalPoint,
                CultureInfo.InvariantCulture,
                out seconds
            )
        )
        {
            return false;
        }

        // Second 60 is a leap second: the first of the next minute here.
        if (hours > 23 || minutes > 59 || seconds >= 61.0)
        {
            return false;
        }

        ofDay =
            new TimeSpan(hours, minutes, 0)
            + TimeSpan.FromTicks((long)Math.Round(seconds * TimeSpan.TicksPerSecond));
        return true;
    }
}

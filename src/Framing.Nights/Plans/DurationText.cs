using System.Globalization;

namespace Framing.Nights;

/// <summary>Lengths of time in words.</summary>
public static class DurationText
{
    /// <summary>Minutes, from an hour on hours and minutes, rounded to the minute; seconds below one minute.</summary>
    /// <param name="time">The time, 0 or more.</param>
    /// <returns>Such as <c>40 s</c>, <c>26 min</c>, <c>1 h 05 min</c>, <c>2 h</c>.</returns>
    public static string Of(TimeSpan time)
    {
        if (time < TimeSpan.FromMinutes(1.0))
        {
            return string.Create(
                CultureInfo.InvariantCulture,
                $"{Math.Round(time.TotalSeconds)} s"
            );
        }

        var minutes = (int)Math.Round(time.TotalMinutes, MidpointRounding.AwayFromZero);
        var (hours, rest) = (minutes / 60, minutes % 60);
        return (hours, rest) switch
        {
            (0, _) => string.Create(CultureInfo.InvariantCulture, $"{rest} min"),
            (_, 0) => string.Create(CultureInfo.InvariantCulture, $"{hours} h"),
            _ => string.Create(CultureInfo.InvariantCulture, $"{hours} h {rest:00} min"),
        };
    }
}

namespace Framing.Sky;

/// <summary>The difference between terrestrial time and UTC.</summary>
/// <remarks>
/// Leap seconds: IERS Bulletin C (numbers as in ERFA 2.0.0, dat). Before 1972 UTC ran otherwise: 1960, 1966 and the end of
/// 1971 are its differences on those days (same table), 1950 and 1955 the difference to universal time (Meeus,
/// Astronomical Algorithms, table 10.A; from memory, within 0.1 s of the polynomial of Espenak and Meeus).
/// </remarks>
internal static class LeapSeconds
{
    private const double TerrestrialMinusAtomic = 32.184;

    // First day with one second more, from 10 s on 1972 January 1.
    private static readonly DateTime[] Steps =
    [
        Day(1972, 7),
        Day(1973, 1),
        Day(1974, 1),
        Day(1975, 1),
        Day(1976, 1),
        Day(1977, 1),
        Day(1978, 1),
        Day(1979, 1),
        Day(1980, 1),
        Day(1981, 7),
        Day(1982, 7),
        Day(1983, 7),
        Day(1985, 7),
        Day(1988, 1),
        Day(1990, 1),
        Day(1991, 1),
        Day(1992, 7),
        Day(1993, 7),
        Day(1994, 7),
        Day(1996, 1),
        Day(1997, 7),
        Day(1999, 1),
        Day(2006, 1),
        Day(2009, 1),
        Day(2012, 7),
        Day(2015, 7),
        Day(2017, 1),
    ];

    private static readonly (DateTime Day, double Seconds)[] Before1972 =
    [
        (Day(1950, 1), 29.15),
        (Day(1955, 1), 31.07),
        (Day(1960, 1), 33.127),
        (Day(1966, 1), 36.497),
        (Day(1972, 1), 42.076),
    ];

    /// <summary>Terrestrial time minus UTC.</summary>
    /// <param name="utc">The time in UTC; see <see cref="TerrestrialTime.FromUtc"/> for the rule outside the table.</param>
    /// <returns>Seconds.</returns>
    public static double TerrestrialMinusUtc(DateTime utc)
    {
        if (utc >= Before1972[^1].Day)
        {
            var steps = Array.BinarySearch(Steps, utc);
            return TerrestrialMinusAtomic + 10.0 + (steps >= 0 ? steps + 1 : ~steps);
        }

        for (var i = Before1972.Length - 2; i >= 0; i--)
        {
            var (from, seconds) = Before1972[i];
            if (utc >= from)
            {
                var (to, secondsThen) = Before1972[i + 1];
                return seconds + ((secondsThen - seconds) * ((utc - from) / (to - from)));
            }
        }

        return Before1972[0].Seconds;
    }

    private static DateTime Day(int year, int month) =>
        new(year, month, 1, 0, 0, 0, DateTimeKind.Utc);
}

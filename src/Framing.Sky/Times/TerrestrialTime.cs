using System.Globalization;

namespace Framing.Sky;

/// <summary>A moment in terrestrial time (TT): the even time in which precession, nutation and orbits run.</summary>
/// <remarks>
/// <para>Kept as whole days and a fraction, so that it is good to a microsecond.</para>
/// <para><c>default(TerrestrialTime)</c> is J2000.0: 2000 January 1, 12h TT, Julian date 2451545.0.</para>
/// </remarks>
public readonly struct TerrestrialTime : IEquatable<TerrestrialTime>, IComparable<TerrestrialTime>
{
    private const double J2000JulianDate = 2451545.0;
    private const double DaysPerYear = 365.25;

    private static readonly long J2000Ticks = new DateTime(
        2000,
        1,
        1,
        12,
        0,
        0,
        DateTimeKind.Utc
    ).Ticks;

    private readonly double wholeDays;
    private readonly double fraction;

    private TerrestrialTime(double wholeDays, double fraction)
    {
        // The fraction is kept from 0 (included) to 1 (left out), so that equal moments are equal numbers.
        // A tiny negative fraction becomes 1 by rounding: that is the next day's 0.
        var carry = Math.Floor(fraction);
        var rest = fraction - carry;
        this.wholeDays = wholeDays + carry + (rest >= 1.0 ? 1.0 : 0.0);
        this.fraction = rest >= 1.0 ? 0.0 : rest;
    }

    /// <summary>2000 January 1, 12h TT.</summary>
    public static TerrestrialTime J2000 => default;

    /// <summary>Days of 86400 s since J2000.0.</summary>
    public double DaysSinceJ2000 => wholeDays + fraction;

    /// <summary>Julian centuries of 36525 days since J2000.0.</summary>
    public double CenturiesSinceJ2000 => DaysSinceJ2000 / (100.0 * DaysPerYear);

    /// <summary>The Julian epoch as a year with a fraction: 2000.0 at J2000.0.</summary>
    public double JulianYear => 2000.0 + (DaysSinceJ2000 / DaysPerYear);

    /// <summary>The Julian date (TT) as one number, good to 40 µs.</summary>
    public double JulianDate => J2000JulianDate + wholeDays + fraction;

    /// <summary>True when both are the same moment.</summary>
    public static bool operator ==(TerrestrialTime left, TerrestrialTime right) =>
        left.Equals(right);

    /// <summary>True when the moments differ.</summary>
    public static bool operator !=(TerrestrialTime left, TerrestrialTime right) =>
        !left.Equals(right);

    /// <summary>True when the left moment is earlier.</summary>
    public static bool operator <(TerrestrialTime left, TerrestrialTime right) =>
        left.CompareTo(right) < 0;

    /// <summary>True when the left moment is later.</summary>
    public static bool operator >(TerrestrialTime left, TerrestrialTime right) =>
        left.CompareTo(right) > 0;

    /// <summary>True when the left moment is not later.</summary>
    public static bool operator <=(TerrestrialTime left, TerrestrialTime right) =>
        left.CompareTo(right) <= 0;

    /// <summary>True when the left moment is not earlier.</summary>
    public static bool operator >=(TerrestrialTime left, TerrestrialTime right) =>
        left.CompareTo(right) >= 0;

    /// <summary>The moment of a civil time in UTC.</summary>
    /// <param name="utc">The time; its kind must be <see cref="DateTimeKind.Utc"/>.</param>
    /// <returns>The same moment in terrestrial time.</returns>
    /// <exception cref="ArgumentException">The kind is not UTC: a local time would be off by hours.</exception>
    /// <remarks>
    /// <para>From 1972 to the last leap second known here (2017): exact, 32.184 s and the leap seconds of the IERS.</para>
    /// <para>
    /// After it: the last count (37 s) is kept. Wrong by one second for each leap second that is announced later; leap
    /// seconds are to end by 2035 (General Conference on Weights and Measures 2022, resolution 4).
    /// </para>
    /// <para>1950 to 1971: straight lines between known differences, within 0.5 s. Before: 29.15 s, within 32 s from 1900 on.</para>
    /// <para>Ten seconds move a place of date by less than 0.0001″.</para>
    /// </remarks>
    public static TerrestrialTime FromUtc(DateTime utc)
    {
        if (utc.Kind != DateTimeKind.Utc)
        {
            throw new ArgumentException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The time {utc:yyyy-MM-ddTHH:mm:ss} is of kind {utc.Kind}; it must be UTC."
                ),
                nameof(utc)
            );
        }

        var (days, rest) = Math.DivRem(utc.Ticks - J2000Ticks, TimeSpan.TicksPerDay);
        return new(
            days,
            ((double)rest / TimeSpan.TicksPerDay) + (LeapSeconds.TerrestrialMinusUtc(utc) / 86400.0)
        );
    }

    /// <summary>The moment of a Julian date in terrestrial time, given as one number or as a sum of two.</summary>
    /// <param name="julianDate">Julian date (TT), days; finite.</param>
    /// <param name="fraction">Days to add, finite: with a whole or half number before it the sum keeps its last digits.</param>
    /// <returns>The moment.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is NaN or infinite.</exception>
    public static TerrestrialTime FromJulianDate(double julianDate, double fraction = 0.0)
    {
        if (!double.IsFinite(julianDate))
        {
            throw new ArgumentOutOfRangeException(
                nameof(julianDate),
                julianDate,
                "A Julian date must be a finite number."
            );
        }

        if (!double.IsFinite(fraction))
        {
            throw new ArgumentOutOfRangeException(
                nameof(fraction),
                fraction,
                "A Julian date must be a finite number."
            );
        }

        var days = julianDate - J2000JulianDate;
        var whole = Math.Floor(days);
        return new(whole, days - whole + fraction);
    }

    /// <inheritdoc/>
    public bool Equals(TerrestrialTime other) =>
        wholeDays.Equals(other.wholeDays) && fraction.Equals(other.fraction);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is TerrestrialTime other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(wholeDays, fraction);

    /// <inheritdoc/>
    public int CompareTo(TerrestrialTime other)
    {
        var days = wholeDays.CompareTo(other.wholeDays);
        return days != 0 ? days : fraction.CompareTo(other.fraction);
    }

    /// <summary>The Julian date with six decimals, in the invariant culture, for logs and messages.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"JD {JulianDate:0.000000} TT");
}

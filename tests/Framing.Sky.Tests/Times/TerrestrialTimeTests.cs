using System.Globalization;

namespace Framing.Sky.Tests;

public sealed class TerrestrialTimeTests
{
    [Fact]
    public void FromUtc_FourHundredMoments1960To2025_AgreesWithErfa()
    {
        // Source: ERFA 2.0.0, dtf2d, utctai and taitt; tests/reference/of-date/make_values.py.
        var rows = TestTable.Rows("terrestrial-time.csv", "utc,jd_tt_day,jd_tt_fraction");
        Assert.Equal(463, rows.Count);
        foreach (var row in rows)
        {
            var utc = DateTime.Parse(
                row[0],
                CultureInfo.InvariantCulture,
                DateTimeStyles.AdjustToUniversal
            );
            var expected = TerrestrialTime.FromJulianDate(Number(row[1]), Number(row[2]));
            var off =
                (TerrestrialTime.FromUtc(utc).DaysSinceJ2000 - expected.DaysSinceJ2000) * 86400.0;

            // Exact from 1972 on (the difference of two numbers of days is good to 2 µs); before, the stated half second.
            var allowed = utc.Year >= 1972 ? 3e-6 : 0.5;
            Assert.True(
                Math.Abs(off) <= allowed,
                FormattableString.Invariant($"{row[0]} is off by {off:R} s.")
            );
        }
    }

    [Theory]
    // Source: Espenak and Meeus, polynomials of TT - UT (NASA/TP-2006-214141), computed by PyMeeus 0.5.11.
    [InlineData(1900, -2.73, 32.0)]
    [InlineData(1920, 21.24, 32.0)]
    [InlineData(1940, 24.42, 32.0)]
    [InlineData(1950, 29.09, 0.5)]
    [InlineData(1952, 29.89, 0.5)]
    [InlineData(1954, 30.67, 0.5)]
    [InlineData(1956, 31.46, 0.5)]
    [InlineData(1958, 32.27, 0.5)]
    public void FromUtc_Before1960_StaysWithinTheStatedError(
        int year,
        double terrestrialMinusUniversal,
        double allowed
    )
    {
        var utc = new DateTime(year, 1, 1, 12, 0, 0, DateTimeKind.Utc);
        var days = (utc - new DateTime(2000, 1, 1, 12, 0, 0, DateTimeKind.Utc)).TotalDays;

        var difference = (TerrestrialTime.FromUtc(utc).DaysSinceJ2000 - days) * 86400.0;
        Assert.Equal(terrestrialMinusUniversal, difference, allowed);
    }

    [Fact]
    public void FromUtc_FarAhead_KeepsTheLastLeapSecond()
    {
        // 32.184 s + 37 s (IERS Bulletin C 52: since 2017 January 1).
        var utc = new DateTime(2100, 1, 1, 12, 0, 0, DateTimeKind.Utc);

        Assert.Equal(
            36525.0 + (69.184 / 86400.0),
            TerrestrialTime.FromUtc(utc).DaysSinceJ2000,
            1e-10
        );
    }

    [Theory]
    [InlineData(DateTimeKind.Local)]
    [InlineData(DateTimeKind.Unspecified)]
    public void FromUtc_OtherKinds_AreRefusedWithTheTime(DateTimeKind kind)
    {
        var error = Assert.Throws<ArgumentException>(() =>
            TerrestrialTime.FromUtc(new DateTime(2026, 12, 5, 21, 0, 0, kind))
        );

        Assert.Contains("2026-12-05T21:00:00", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Default_IsJ2000()
    {
        Assert.Equal(TerrestrialTime.FromJulianDate(2451545.0), TerrestrialTime.J2000);
        Assert.Equal(2000.0, TerrestrialTime.J2000.JulianYear);
        Assert.Equal(2451545.0, TerrestrialTime.J2000.JulianDate);
        Assert.Equal("JD 2451545.000000 TT", TerrestrialTime.J2000.ToString());
    }

    [Fact]
    public void JulianYear_ACenturyLater_IsOneCenturyMore()
    {
        var time = TerrestrialTime.FromJulianDate(2451545.0 + 36525.0);

        Assert.Equal(2100.0, time.JulianYear);
        Assert.Equal(1.0, time.CenturiesSinceJ2000);
    }

    [Theory]
    [InlineData(2400000.5, 53736.25)]
    [InlineData(2453736.75, 0.0)]
    [InlineData(2453737.0, -0.25)]
    [InlineData(0.0, 2453736.75)]
    public void FromJulianDate_HoweverSplit_IsTheSameMoment(double julianDate, double fraction) =>
        Assert.Equal(
            TerrestrialTime.FromJulianDate(2453736.5, 0.25),
            TerrestrialTime.FromJulianDate(julianDate, fraction)
        );

    [Fact]
    public void FromJulianDate_ATinyStepBeforeADay_IsThatDay()
    {
        var day = TerrestrialTime.FromJulianDate(2451545.0);

        Assert.Equal(day, TerrestrialTime.FromJulianDate(2451545.0, -1e-20));
    }

    [Fact]
    public void FromJulianDate_NearbyMoments_AreToldApartAndOrdered()
    {
        // 1 ns is far below what one number of days since 4713 BC resolves (40 µs).
        var first = TerrestrialTime.FromJulianDate(2461380.5, 0.3);
        var second = TerrestrialTime.FromJulianDate(2461380.5, 0.3 + 1e-14);

        Assert.True(first < second);
        Assert.True(second > first);
        Assert.True(first <= second);
        Assert.True(second >= first);
        Assert.True(first != second);
        Assert.NotEqual(first.GetHashCode(), second.GetHashCode());
    }

    [Theory]
    [InlineData(double.NaN, 0.0)]
    [InlineData(2451545.0, double.PositiveInfinity)]
    public void FromJulianDate_NotFinite_IsRefused(double julianDate, double fraction) =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            TerrestrialTime.FromJulianDate(julianDate, fraction)
        );

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}

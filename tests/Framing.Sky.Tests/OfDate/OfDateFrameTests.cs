using FsCheck.Xunit;

namespace Framing.Sky.Tests;

public sealed class OfDateFrameTests
{
    private static readonly OfDateFrame Frame = OfDateFrame.At(
        TerrestrialTime.FromUtc(new DateTime(2026, 12, 5, 21, 0, 0, DateTimeKind.Utc))
    );

    [Property(Arbitrary = [typeof(Arbitraries)])]
    public void ToIcrs_OfToOfDate_LeadsBack(SkyDirection direction, PositionAngle season)
    {
        var frame = OfDateFrame.At(
            TerrestrialTime.FromJulianDate(2415020.5, season.Degrees / 360.0 * 109570.0)
        );

        var there = frame.ToOfDate(direction);
        Assert.InRange(frame.ToIcrs(there).SeparationTo(direction).Arcseconds, 0.0, 1e-9);
        Assert.InRange(
            frame.ToOfDate(frame.ToIcrs(direction)).SeparationTo(direction).Arcseconds,
            0.0,
            1e-9
        );
    }

    [Property(Arbitrary = [typeof(Arbitraries)])]
    public void ToOfDate_TwoDirections_KeepTheirSeparationButForAberrationAndBending(
        SkyDirection first,
        SkyDirection second
    )
    {
        // Aberration moves either by 20.8″ at most, bending by 5.8″ (softened within 5′ of the Sun's centre).
        var before = first.SeparationTo(second);
        var after = Frame.ToOfDate(first).SeparationTo(Frame.ToOfDate(second));

        Assert.InRange((after - before).Arcseconds, -54.0, 54.0);
    }

    [Fact]
    public void ToIcrs_BehindTheSun_LeadsBack()
    {
        // Steps through the disc of the Sun, where bending changes fastest.
        for (var step = 0; step <= 200; step++)
        {
            var direction = Frame.Sun.Offset(
                PositionAngle.FromDegrees(step * 77.0),
                Angle.FromArcminutes(step * 0.1)
            );
            var back = Frame.ToOfDate(Frame.ToIcrs(direction));
            Assert.InRange(back.SeparationTo(direction).Arcseconds, 0.0, 1e-9);
        }
    }

    [Fact]
    public void PoleOfDate_WithoutAberrationAndBending_StandsAtTheNorthOfDate()
    {
        // The axis is a place, no star: seen from the Earth a star at that place is shifted by aberration, up to 20.8″.
        var star = Frame.ToOfDate(Frame.PoleOfDate);

        Assert.InRange(star.SeparationTo(SkyDirection.NorthPole).Arcseconds, 1.0, 21.0);
        // 27 years of precession at 20.04″ a year and nutation up to 9.2″ (maths of IAU 2006): about 9′.
        Assert.InRange(Frame.PoleOfDate.SeparationTo(SkyDirection.NorthPole).Arcminutes, 8.8, 9.2);
    }

    [Theory]
    [InlineData(30.0, 20.0)]
    [InlineData(200.0, -60.0)]
    [InlineData(90.0, 85.0)]
    [InlineData(310.0, 88.0)]
    public void NorthOfDateAt_APlace_IsThePositionAngleOfAStepAlongTheDeclinationOfDate(
        double rightAscension,
        double declination
    )
    {
        // A step towards the pole of date, measured in both frames; aberration turns nothing, it is conformal.
        var place = SkyDirection.FromDegrees(rightAscension, declination);
        var step = place.Offset(Frame.NorthOfDateAt(place), Angle.FromArcminutes(1.0));
        var angleOfDate = Frame.ToOfDate(place).PositionAngleTo(Frame.ToOfDate(step));

        // The pole as seen is the pole as it is but for 20″, an angle of 20″/sin(polar distance).
        var allowed = 0.006 / Math.Cos(Angle.FromDegrees(declination).Radians);
        Assert.InRange(PositionAngle.North.TurnTo(angleOfDate).Degrees, -allowed, allowed);
    }

    [Fact]
    public void Sun_ThreeHundredTimes1900To2200_StaysWithinThreeArcseconds()
    {
        var rows = TestTable.Numbers("sun-of-date.csv", "jd_tt,ra_of_date_deg,dec_of_date_deg");
        Assert.Equal(300, rows.Count);
        var errors = rows.Select(row =>
                OfDateFrame
                    .At(TerrestrialTime.FromJulianDate(row[0]))
                    .Sun.SeparationTo(SkyDirection.FromDegrees(row[1], row[2]))
                    .Arcseconds
            )
            .ToList();

        // Source: ERFA 2.0.0, epv00, ab, pnm06a; tests/reference/of-date/make_values.py. Measured: worst 2.4″.
        Assert.InRange(errors.Max(), 0.0, 3.0);
    }

    [Theory]
    [InlineData(1899, false)]
    [InlineData(1901, true)]
    [InlineData(2199, true)]
    [InlineData(2201, false)]
    public void Covers_AYear_AgreesWithAt(int year, bool covered)
    {
        var time = TerrestrialTime.FromUtc(new DateTime(year, 7, 1, 0, 0, 0, DateTimeKind.Utc));

        Assert.Equal(covered, OfDateFrame.Covers(time));
        if (covered)
        {
            Assert.Equal(time, OfDateFrame.At(time).Time);
        }
        else
        {
            var error = Assert.Throws<ArgumentOutOfRangeException>(() => OfDateFrame.At(time));
            Assert.Contains("1900 to 2200", error.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Directions_OfDefault_AreRefused()
    {
        Assert.Throws<ArgumentException>(() => Frame.ToOfDate(default));
        Assert.Throws<ArgumentException>(() => Frame.ToIcrs(default));
        Assert.Throws<ArgumentException>(() => Frame.NorthOfDateAt(default));
    }
}

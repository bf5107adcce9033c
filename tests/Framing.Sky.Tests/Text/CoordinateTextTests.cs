using FsCheck;
using FsCheck.Xunit;

namespace Framing.Sky.Tests;

public sealed class CoordinateTextTests
{
    [Theory]
    [InlineData(83.8221, 1, " ", "05 35 17.3")]
    [InlineData(83.8221, 0, ":", "05:35:17")]
    [InlineData(83.8221, 3, ":", "05:35:17.304")]
    [InlineData(360.0, 1, ":", "00:00:00.0")]
    [InlineData(-15.0, 0, ":", "23:00:00")]
    [InlineData(375.0, 0, "", "010000")]
    public void RightAscension_Value_Written(
        double degrees,
        int decimals,
        string separator,
        string expected
    ) =>
        Assert.Equal(
            expected,
            CoordinateText.RightAscension(Angle.FromDegrees(degrees), decimals, separator)
        );

    [Theory]
    [InlineData(-5.391111, 0, " ", "-05 23 28")]
    [InlineData(5.391111, 2, ":", "+05:23:28.00")]
    [InlineData(-89.99999, 0, ":", "-90:00:00")]
    [InlineData(90.0000001, 3, ":", "+90:00:00.000")]
    public void Declination_Value_Written(
        double degrees,
        int decimals,
        string separator,
        string expected
    ) =>
        Assert.Equal(
            expected,
            CoordinateText.Declination(Angle.FromDegrees(degrees), decimals, separator)
        );

    [Theory]
    [InlineData(83.8220833, 6, "83.822083")]
    [InlineData(359.99999999, 6, "0.000000")]
    [InlineData(0.4, 0, "0")]
    public void RightAscensionDegrees_Value_Written(
        double degrees,
        int decimals,
        string expected
    ) =>
        Assert.Equal(
            expected,
            CoordinateText.RightAscensionDegrees(Angle.FromDegrees(degrees), decimals)
        );

    [Theory]
    [InlineData(-5.391111, 6, "-5.391111")]
    [InlineData(-0.0000001, 6, "+0.000000")]
    [InlineData(61.45278, 4, "+61.4528")]
    public void DeclinationDegrees_Value_Written(double degrees, int decimals, string expected) =>
        Assert.Equal(
            expected,
            CoordinateText.DeclinationDegrees(Angle.FromDegrees(degrees), decimals)
        );

    [Theory]
    [InlineData(-1)]
    [InlineData(10)]
    public void Write_DecimalsOutOfRange_IsABrokenPromise(int decimals)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            CoordinateText.RightAscension(Angle.Zero, decimals)
        );
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            CoordinateText.DeclinationDegrees(Angle.Zero, decimals)
        );
    }

    [Property(MaxTest = 1000, Arbitrary = [typeof(Arbitraries)])]
    public void Write_AnyDirectionAnyDecimals_ReadsBackWithinHalfAStep(
        SkyDirection direction,
        DecimalCount decimals
    )
    {
        var ra = direction.RightAscension;
        var dec = direction.Declination;
        var step = Math.Pow(10.0, -decimals.Value);

        // 1e-10 arcsec: rounding noise of angles near 360 degrees.
        var second = Angle.FromArcseconds((0.5 * step) + 1e-9);
        var minute = Angle.FromArcminutes((0.5 * step) + 1e-10);
        var degree = Angle.FromDegrees((0.5 * step) + 1e-12);
        Near(ra, Ra(CoordinateText.RightAscension(ra, decimals.Value)), second * 15.0);
        Near(ra, Ra(CoordinateText.RightAscension(ra, decimals.Value, ":")), second * 15.0);
        Near(ra, Ra(CoordinateText.RightAscensionMinutes(ra, decimals.Value)), minute * 15.0);
        Near(ra, Ra(CoordinateText.RightAscensionDegrees(ra, decimals.Value)), degree);
        Near(dec, Dec(CoordinateText.Declination(dec, decimals.Value)), second);
        Near(dec, Dec(CoordinateText.DeclinationMinutes(dec, decimals.Value, ":")), minute);
        Near(dec, Dec(CoordinateText.DeclinationDegrees(dec, decimals.Value)), degree);
    }

    [Property(MaxTest = 1000, Arbitrary = [typeof(Arbitraries)])]
    public void Write_WhatWasRead_IsTheSameText(SkyDirection direction, DecimalCount decimals)
    {
        var ra = CoordinateText.RightAscension(direction.RightAscension, decimals.Value);
        var dec = CoordinateText.Declination(direction.Declination, decimals.Value);
        Assert.Equal(ra, CoordinateText.RightAscension(Ra(ra), decimals.Value));
        Assert.Equal(dec, CoordinateText.Declination(Dec(dec), decimals.Value));
    }

    private static Angle Ra(string text) => CoordinateReader.ReadRightAscension(text).Value;

    private static Angle Dec(string text) => CoordinateReader.ReadDeclination(text).Value;

    private static void Near(Angle expected, Angle actual, Angle tolerance) =>
        Assert.True(
            (actual - expected).WrappedSigned.Magnitude <= tolerance,
            FormattableString.Invariant(
                $"{actual.Degrees:R} is not {expected.Degrees:R} within {tolerance.Arcseconds} arcsec."
            )
        );
}

namespace Framing.Sky.Tests;

public sealed class EntryTextTests
{
    // The place of the project's written examples: 2h 33m 21s, +61° 27′ 10″.
    private static readonly Angle Ra = Angle.FromDegrees(38.3375);
    private static readonly Angle Dec = Angle.FromDegrees(61.0 + (27.0 / 60.0) + (10.0 / 3600.0));

    [Theory]
    [InlineData(EntryFormat.HmsDms, "2h 33m 21s", "+61° 27′ 10″")]
    [InlineData(EntryFormat.HmDm, "2h 33.4m", "+61° 27′")]
    [InlineData(EntryFormat.Degrees, "38.3375", "+61.4528")]
    public void Write_Example_AsPromised(EntryFormat format, string ra, string dec)
    {
        Assert.Equal(ra, EntryText.RightAscension(Ra, format));
        Assert.Equal(dec, EntryText.Declination(Dec, format));
    }

    [Theory]
    [InlineData(EntryFormat.HmsDms, "\u22125° 03′ 07″")]
    [InlineData(EntryFormat.HmDm, "\u22125° 03′")]
    [InlineData(EntryFormat.Degrees, "\u22125.0519")]
    public void Declination_South_CarriesTheMinusSign(EntryFormat format, string expected) =>
        Assert.Equal(
            expected,
            EntryText.Declination(Angle.FromDegrees(-5.0 - (3.0 / 60.0) - (7.0 / 3600.0)), format)
        );

    [Theory]
    [InlineData(EntryFormat.HmsDms, "0h 00m 00s", "+0° 00′ 00″")]
    [InlineData(EntryFormat.HmDm, "0h 00.0m", "+0° 00′")]
    [InlineData(EntryFormat.Degrees, "0.0000", "+0.0000")]
    public void Write_JustBelowZero_IsZero(EntryFormat format, string ra, string dec)
    {
        Assert.Equal(ra, EntryText.RightAscension(Angle.FromDegrees(-0.00001), format));
        Assert.Equal(dec, EntryText.Declination(Angle.FromDegrees(-0.00001), format));
    }

    [Theory]
    [InlineData(EntryFormat.HmsDms, "+90° 00′ 00″")]
    [InlineData(EntryFormat.HmDm, "+90° 00′")]
    [InlineData(EntryFormat.Degrees, "+90.0000")]
    public void Declination_BeyondThePoleByRounding_StopsAtThePole(
        EntryFormat format,
        string expected
    ) => Assert.Equal(expected, EntryText.Declination(Angle.FromDegrees(90.0 + 1e-13), format));

    [Fact]
    public void Write_UnknownFormat_IsABrokenPromise()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            EntryText.RightAscension(Ra, (EntryFormat)7)
        );
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            EntryText.Declination(Dec, (EntryFormat)7)
        );
    }

    [Theory]
    [InlineData(EntryFormat.HmsDms, 7.5, 0.5)]
    [InlineData(EntryFormat.HmDm, 45.0, 30.0)]
    [InlineData(EntryFormat.Degrees, 0.18, 0.18)]
    public void Write_ThenRead_IsWithinHalfAStep(
        EntryFormat format,
        double raArcsec,
        double decArcsec
    )
    {
        for (var i = 0; i < 2000; i++)
        {
            var ra = Angle.FromDegrees(i * 0.180037);
            var dec = Angle.FromDegrees(-90.0 + (i * 0.090031));
            var text =
                EntryText.RightAscension(ra, format) + ", " + EntryText.Declination(dec, format);
            var read = CoordinateReader.ReadDirection(text).Value;
            Assert.True((read.Declination - dec).Magnitude.Arcseconds <= decArcsec + 1e-6, text);
            var readRa = CoordinateReader
                .ReadRightAscension(EntryText.RightAscension(ra, format))
                .Value;
            Assert.True((readRa - ra).WrappedSigned.Magnitude.Arcseconds <= raArcsec + 1e-6, text);
        }
    }
}

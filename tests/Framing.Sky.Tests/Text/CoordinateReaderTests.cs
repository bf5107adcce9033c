using FsCheck.Xunit;

namespace Framing.Sky.Tests;

public sealed class CoordinateReaderTests
{
    [Theory]
    [InlineData("5h", 75.0)]
    [InlineData("5.5h", 82.5)]
    [InlineData("5 30", 82.5)]
    [InlineData("5:30", 82.5)]
    [InlineData("5h30m", 82.5)]
    [InlineData("05 H 30 M 36 S", 82.65)]
    [InlineData("5 30,6", 82.65)]
    [InlineData("05 30 36,0", 82.65)]
    [InlineData("82.65", 82.65)]
    [InlineData("+82.65", 82.65)]
    [InlineData("82d39m", 82.65)]
    [InlineData("82° 39′ 00″", 82.65)]
    [InlineData("82.65 deg", 82.65)]
    [InlineData("  0:00:00  ", 0.0)]
    [InlineData("23 59 59.999", 359.99999583333333)]
    public void ReadRightAscension_EveryForm_Read(string text, double degrees) =>
        Assert.Equal(degrees, CoordinateReader.ReadRightAscension(text).Value.Degrees, 1e-10);

    [Theory]
    [InlineData("-5", -5.0)]
    [InlineData("\u22125.25", -5.25)]
    [InlineData("- 5 15", -5.25)]
    [InlineData("-5:15", -5.25)]
    [InlineData("-5° 15'", -5.25)]
    [InlineData("-5d15m36s", -5.26)]
    [InlineData("-5º15\u201936\u201D", -5.26)]
    [InlineData("-5° 15' 36''", -5.26)]
    [InlineData("-5 15' 36\"", -5.26)]
    [InlineData("+5 15,6", 5.26)]
    [InlineData("90", 90.0)]
    [InlineData("-90 00 00.0", -90.0)]
    [InlineData("\u22120° 00′ 36″", -0.01)]
    [InlineData(".5", 0.5)]
    [InlineData("5.", 5.0)]
    public void ReadDeclination_EveryForm_Read(string text, double degrees) =>
        Assert.Equal(degrees, CoordinateReader.ReadDeclination(text).Value.Degrees, 1e-10);

    [Theory]
    [InlineData("2h 41m, +60.9", 40.25, 60.9)]
    [InlineData("40.2, 61.1", 40.2, 61.1)]
    [InlineData("40.2,61.1", 40.2, 61.1)]
    [InlineData("40.2 61.1", 40.2, 61.1)]
    [InlineData("40,2 -61,1", 40.2, -61.1)]
    [InlineData("40.2 ,\u221261.1", 40.2, -61.1)]
    [InlineData("40.2d -61.1d", 40.2, -61.1)]
    [InlineData("40.2° 61.1°", 40.2, 61.1)]
    [InlineData("2h41m60.9d", 40.25, 60.9)]
    [InlineData("2h 41m 60.9", 40.25, 60.9)]
    [InlineData("2h 41m+60° 54′", 40.25, 60.9)]
    [InlineData("2 41 60 54", 40.25, 60.9)]
    [InlineData("2:41 60:54", 40.25, 60.9)]
    [InlineData("2:41 60.9", 40.25, 60.9)]
    [InlineData("2 41 00 60 54 00", 40.25, 60.9)]
    [InlineData("2 41 00 -60 54", 40.25, -60.9)]
    [InlineData("2 41 00,0 -60 54 00,0", 40.25, -60.9)]
    [InlineData("02:41:00,+60:54:00", 40.25, 60.9)]
    [InlineData("2.5h, 60 54", 37.5, 60.9)]
    [InlineData("37.5d, 60 54", 37.5, 60.9)]
    [InlineData("2h 41m 00s 60 54 00", 40.25, 60.9)]
    public void ReadDirection_EveryForm_Read(string text, double ra, double dec) =>
        Assert.Equal(
            0.0,
            CoordinateReader
                .ReadDirection(text)
                .Value.SeparationTo(SkyDirection.FromDegrees(ra, dec))
                .Arcseconds,
            1e-6
        );

    [Theory]
    [InlineData("24 00 00", "hours are 24")]
    [InlineData("24h", "24h")]
    [InlineData("360", "degrees are 360")]
    [InlineData("-1 30 00", "negative")]
    [InlineData("12 61.5", "minutes are 61.5")]
    [InlineData("12 30 60", "seconds are 60")]
    [InlineData("12.5 30", "12.5 has decimals")]
    [InlineData("12 +30", "a sign stands inside it, before 30")]
    [InlineData("12h 30s", "30s stands where the minutes belong")]
    [InlineData("12m", "12m stands first")]
    [InlineData("12h 30'", "30' stands where the minutes belong")]
    [InlineData("12:30:", "after the last colon")]
    [InlineData("12::30", "\":\" is not a number")]
    [InlineData("12h30m x", "\"x\" is not a number")]
    [InlineData("1e3", "\"e\" is not a number")]
    [InlineData("1.2.3", "\".\" is not a number")]
    [InlineData("12:30:15,5", "a comma marks decimals only where spaces part the numbers")]
    [InlineData("+", "missing after the sign")]
    [InlineData("7\rs", "7s stands first")]
    [InlineData("12 7777777777777777777777777777", "minutes are 77777777777777777777...,")]
    [InlineData("Infinity", "\"Infinity\" is not a number")]
    [InlineData("٣", "is not a number")]
    public void ReadRightAscension_Fault_OneLineNamesIt(string text, string expected) =>
        Refused(CoordinateReader.ReadRightAscension(text).Error, "right ascension", text, expected);

    [Theory]
    [InlineData("90 00 00.001", "beyond the pole")]
    [InlineData("-90.0000001", "beyond the pole")]
    [InlineData("7h 30m", "7h is in hours")]
    [InlineData("45 60", "minutes are 60")]
    [InlineData("10 20 30 40", "40 is left over")]
    [InlineData("99999999999999999999999999999999999999", "beyond the pole")]
    public void ReadDeclination_Fault_OneLineNamesIt(string text, string expected) =>
        Refused(CoordinateReader.ReadDeclination(text).Error, "declination", text, expected);

    [Theory]
    [InlineData("40.2", "the declination is missing")]
    [InlineData(", 61", "the right ascension is missing")]
    [InlineData("40.2,", "the declination is missing")]
    [InlineData("12 30 40", "does not show where the right ascension ends")]
    [InlineData("1 2 3 4 5", "does not show where the right ascension ends")]
    [InlineData("1 2 3 4 5 6 7", "does not show where the right ascension ends")]
    [InlineData("2.5, 61 10", "could be hours or degrees; write 2.5h or 2.5d")]
    [InlineData("40,2, 61,1", "decimals need a point")]
    [InlineData("40,2,61,1", "decimals need a point")]
    [InlineData("40,2 61", "could mark decimals or part the coordinates")]
    [InlineData("1, 2, 3", "more than one comma")]
    [InlineData("2h 41m, 91", "declination \"91\": it is beyond the pole")]
    [InlineData("25 00 00 +10 00 00", "right ascension \"25 00 00\": the hours are 25")]
    [InlineData("1 2 3 4 +5 6", "right ascension \"1 2 3 4\": there are too many parts")]
    [InlineData("1 2 +3 -4", "a sign stands inside it")]
    [InlineData("here", "\"here\" is not a number")]
    [InlineData("1.2.3", "\".\" is not a number")]
    [InlineData("1.2 .3.", "\".\" is not a number")]
    [InlineData("7:-21", "a sign stands after a colon")]
    [InlineData("here, there", "right ascension \"here\"")]
    public void ReadDirection_Fault_OneLineNamesIt(string text, string expected) =>
        Refused(CoordinateReader.ReadDirection(text).Error, "", "", expected);

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData(" \t ")]
    public void Read_Nothing_SaysWhatIsMissing(string? text)
    {
        Refused(CoordinateReader.ReadRightAscension(text).Error, "right ascension", "", "empty");
        Refused(CoordinateReader.ReadDeclination(text).Error, "declination", "", "empty");
        Refused(CoordinateReader.ReadDirection(text).Error, "position", "", "empty");
    }

    [Fact]
    public void Read_LongTextWithLineBreaks_MessageIsShortAndOneLine()
    {
        var error = CoordinateReader
            .ReadDirection("12 30\nand more\r\n" + new string('9', 500))
            .Error;
        Refused(error, "position", "", "\"and\" is not a number");
        Assert.InRange(error!.Length, 1, 240);
    }

    [Property(MaxTest = 500)]
    public void Read_AnyText_NeverThrowsAndRefusesInOneLine(string? text)
    {
        var readings = new[]
        {
            CoordinateReader.ReadRightAscension(text).Error,
            CoordinateReader.ReadDeclination(text).Error,
            CoordinateReader.ReadDirection(text).Error,
        };
        Assert.All(
            readings.OfType<string>(),
            error => Assert.DoesNotContain(error, char.IsControl)
        );
    }

    private static void Refused(string? error, string part, string text, string expected)
    {
        Assert.NotNull(error);
        Assert.StartsWith(
            part,
            error.Replace("the ", "", StringComparison.Ordinal),
            StringComparison.Ordinal
        );
        Assert.Contains(text.Replace('\r', ' '), error, StringComparison.Ordinal);
        Assert.Contains(expected, error, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', error);
    }
}

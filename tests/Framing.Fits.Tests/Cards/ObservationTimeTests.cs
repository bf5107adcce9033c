using System.Globalization;

namespace Framing.Fits.Tests;

public sealed class ObservationTimeTests
{
    [Theory]
    [InlineData("2026-02-17T21:04:05", "2026-02-17T21:04:05.0000000Z")]
    [InlineData("2026-02-17T21:04:05.25", "2026-02-17T21:04:05.2500000Z")]
    [InlineData("2026-02-17", "2026-02-17T00:00:00.0000000Z")]
    [InlineData("2026-02-17T21:04:05.123456789", "2026-02-17T21:04:05.1234568Z")]
    [InlineData(" 2026-02-17T21:04Z ", "2026-02-17T21:04:00.0000000Z")]
    [InlineData("2016-12-31T23:59:60.5", "2017-01-01T00:00:00.5000000Z")]
    public void TryParse_TimeOfTheStandard_IsRead(string text, string expected)
    {
        // The first four are case F41; FITS Standard 4.0, section 9.1.1.
        Assert.True(ObservationTime.TryParse(text, out var time));
        Assert.Equal(expected, time.UtcDateTime.ToString("O", CultureInfo.InvariantCulture));
    }

    [Theory]
    [InlineData("")]
    [InlineData(null)]
    [InlineData("17/02/26")]
    [InlineData("2026-02-30")]
    [InlineData("2026-02-17T24:00:00")]
    [InlineData("2026-02-17T21:60:00")]
    [InlineData("2026-02-17T21:00:61")]
    [InlineData("2026-02-17T-1:00:00")]
    [InlineData("2026-02-17T21:00:1e1")]
    [InlineData("2026-02-17T21:00:00T")]
    public void TryParse_NoSuchTime_IsRefused(string? text) =>
        Assert.False(ObservationTime.TryParse(text, out _));

    [Theory]
    [InlineData("DATE-OBS= '2026-02-17T21:04:05.250Z'", "", "2026-02-17T21:04:05.2500000Z", 0)]
    [InlineData(
        "DATE-OBS= '2026-02-17'",
        "TIME-OBS= '21:04:05'",
        "2026-02-17T21:04:05.0000000Z",
        0
    )]
    [InlineData("DATE-OBS= 'yesterday'", "MJD-OBS = 61088.5", "2026-02-17T12:00:00.0000000Z", 1)]
    [InlineData(
        "DATE-BEG= '2026-02-17T21:04:05'",
        "TIMESYS = 'TAI'",
        "2026-02-17T21:04:05.0000000Z",
        1
    )]
    public void Start_OfHeader_IsTheFirstThatTells(
        string first,
        string second,
        string expected,
        int warnings
    )
    {
        // MJD 61088 is 2026-02-17 (ERFA eraCal2jd 2.0.0: 61088).
        var told = new List<string>();

        var start = ObservationTime.Start(
            HeaderReader.ReadLines("cards", $"{first}\n{second}"),
            told
        );

        Assert.Equal(
            expected,
            start!.Value.UtcDateTime.ToString("O", CultureInfo.InvariantCulture)
        );
        Assert.Equal(warnings, told.Count);
    }
}

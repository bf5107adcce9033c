namespace Framing.Fits.Tests;

public sealed class InheritedHeaderTests
{
    [Theory]
    [InlineData("T", "2026-02-17T21:04:05", "2026-02-17T21:04:05")]
    [InlineData("F", null, null)]
    public void Header_OfAnExtension_TakesOverWhatThePrimarySaysWhenAsked(
        string inherit,
        string? date,
        string? start
    )
    {
        byte[] bytes =
        [
            .. TestData.FitsBytes(
                [
                    "SIMPLE  = T",
                    "BITPIX  = 8",
                    "NAXIS   = 0",
                    "DATE-OBS= '2026-02-17T21:04:05'",
                    "OBJECT  = 'of the file'",
                    "BZERO   = 99",
                ],
                []
            ),
            .. TestData.FitsBytes(
                [
                    "XTENSION= 'IMAGE   '",
                    "BITPIX  = 8",
                    "NAXIS   = 2",
                    "NAXIS1  = 2",
                    "NAXIS2  = 2",
                    "PCOUNT  = 0",
                    "GCOUNT  = 1",
                    $"INHERIT = {inherit}",
                    "OBJECT  = 'of the image'",
                ],
                new byte[2880]
            ),
        ];

        using var file = FitsFile.Open("made", bytes);

        Assert.Equal(date, file.Header.Text("DATE-OBS"));
        Assert.Equal("of the image", file.Header.Text("OBJECT"));
        Assert.False(file.Header.Has("BZERO"));
        Assert.Equal(
            start,
            ObservationTime
                .Start(file.Header, new List<string>())
                ?.UtcDateTime.ToString("s", System.Globalization.CultureInfo.InvariantCulture)
        );
    }
}

namespace Framing.Fits.Tests;

public sealed class ImageShapeTests
{
    [Theory]
    [InlineData("'RGB     '")]
    [InlineData("'COLOUR  '")]
    public void ReadRows_ColoursFirstAndMarked_GivesPlanes(string mark)
    {
        using var file = FitsFile.Open("colours", Colours($"CTYPE1  = {mark}"));
        var image = file.RequireImage();

        Assert.True(image.IsInterleaved);
        Assert.Equal((5, 4, 3), (image.Width, image.Height, image.Planes));
        var rows = new float[10];
        image.ReadRows(1, 2, rows);
        Assert.Equal([1010f, 1011, 1012, 1013, 1014, 1015, 1016, 1017, 1018, 1019], rows);
        Assert.Equal(2019, image.ReadSample(2, 4, 3).Whole);
        Assert.Equal(0, image.ReadSample(0, 0, 0).Whole);
    }

    [Fact]
    public void ReadRows_ColoursFirstAndNotMarked_TakesTheAxesAsTheyStandAndSaysSo()
    {
        using var file = FitsFile.Open("colours", Colours("COMMENT nothing marked"));
        var image = file.RequireImage();

        Assert.Equal((3, 5, 4), (image.Width, image.Height, image.Planes));
        Assert.False(image.IsInterleaved);
    }

    [Fact]
    public void Write_ColoursFirst_IsRefused() =>
        TestData.InFolder(folder =>
        {
            var path = Path.Combine(folder, "colours.fits");
            File.WriteAllBytes(path, Colours("CTYPE1  = 'RGB     '"));

            var problem = Assert.Throws<UnreadableFileException>(() =>
                SolutionUpdate.Write(path, new FitsHeaderBuilder().Add("RADESYS", "ICRS"))
            );

            Assert.Contains("colours come first", problem.Message, StringComparison.Ordinal);
        });

    /// <summary>5 x 4 pixels of three colours, side by side: pixel n holds n, 1000 + n, 2000 + n.</summary>
    private static byte[] Colours(string card)
    {
        var data = new byte[2880];
        for (var i = 0; i < 60; i++)
        {
            var value = (i % 3 * 1000) + (i / 3);
            data[2 * i] = (byte)(value >> 8);
            data[(2 * i) + 1] = (byte)value;
        }

        return TestData.FitsBytes(
            [
                "SIMPLE  =                    T",
                "BITPIX  =                   16",
                "NAXIS   =                    3",
                "NAXIS1  =                    3",
                "NAXIS2  =                    5",
                "NAXIS3  =                    4",
                card,
            ],
            data
        );
    }
}

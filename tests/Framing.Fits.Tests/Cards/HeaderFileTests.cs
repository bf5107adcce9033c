namespace Framing.Fits.Tests;

public sealed class HeaderFileTests
{
    [Theory]
    [InlineData("\uFEFFCRPIX1  = 2.5\r\nCRPIX2  = 3.5\r\n\r\nEND\r\nCRPIX1  = 9\r\n")]
    [InlineData("CRPIX1  =                  2.5 / column\nCRPIX2  = 3.5")]
    public void Read_TextWithOneCardALine_GivesItsCards(string text)
    {
        var header = Read(System.Text.Encoding.UTF8.GetBytes(text));

        Assert.Equal(2.5, header.Number("CRPIX1"));
        Assert.Equal(3.5, header.Number("CRPIX2"));
        Assert.Equal(2, header.Cards.Count);
    }

    [Fact]
    public void Read_FitsFile_GivesTheHeaderOfItsImage()
    {
        var header = HeaderFile.Read(TestData.Path("cases", "image_in_extension.fits"));

        Assert.Equal("IMAGE", header.Text("XTENSION"));
    }

    [Fact]
    public void Read_FitsFileWhoseDataAreCutOff_StillGivesItsCards() =>
        Assert.Equal(
            97.14,
            HeaderFile.Read(TestData.Path("cases", "cut_short.fits")).Number("CRVAL1")
        );

    [Theory]
    [InlineData("", "0 bytes")]
    [InlineData("\0\u0001\u0002", "no text")]
    public void Read_NoCards_IsRefused(string text, string says)
    {
        var problem = Assert.Throws<UnreadableFileException>(() =>
            Read(System.Text.Encoding.UTF8.GetBytes(text))
        );

        Assert.Contains(says, problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_LineLongerThanACard_IsRefusedWithItsNumber()
    {
        var problem = Assert.Throws<UnreadableFileException>(() =>
            Read(System.Text.Encoding.UTF8.GetBytes($"CRPIX1  = 1\nCOMMENT {new string('x', 73)}"))
        );

        Assert.Equal("line 2", problem.Where);
    }

    private static FitsHeader Read(byte[] bytes) =>
        HeaderFile.Read(ByteSource.Of("beside.txt", bytes));
}

namespace Framing.Drawing.Tests;

public sealed class PictureSizeTests
{
    [Theory]
    [InlineData("1600x1000", 1600, 1000)]
    [InlineData(" 800 X 500 ", 800, 500)]
    [InlineData("8000×8000", 8000, 8000)]
    public void TryParse_Size_IsRead(string text, int width, int height)
    {
        Assert.True(PictureSize.TryParse(text, out var size));
        Assert.Equal((width, height), (size.Width, size.Height));
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("1600")]
    [InlineData("1600x")]
    [InlineData("1600x1000x2")]
    [InlineData("319x200")]
    [InlineData("320x199")]
    [InlineData("8001x1000")]
    [InlineData("-800x500")]
    [InlineData("8e2x500")]
    [InlineData("99999999999x500")]
    public void TryParse_NoSize_IsRefused(string? text) =>
        Assert.False(PictureSize.TryParse(text, out _));

    [Fact]
    public void Default_IsSixteenHundredByThousand() =>
        Assert.Equal("1600x1000", default(PictureSize).ToString());

    [Fact]
    public void Constructor_TooSmall_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new PictureSize(100, 1000));
}

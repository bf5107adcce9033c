namespace Framing.Workshop.Tests;

public sealed class OverlapFixedTests
{
    // 4144 x 2822 px of 4.63 um at 250 mm: tangents of 0.07674688 and 0.05226344.
    private const double Width = 4144 * 4.63 / 250_000.0;
    private const double Height = 2822 * 4.63 / 250_000.0;

    [Theory]
    [InlineData(0.0, "0 % of the panel")]
    [InlineData(0.15, "15 % of the panel")]
    [InlineData(0.333, "33.3 % of the panel")]
    [InlineData(0.99, "99 % of the panel")]
    public void Choose_Fraction_IsThatPartOfEachSide(double part, string reason)
    {
        var answer = Ask.Overlap("fraction", Questions.Overlap(), ("overlap_fraction", part));

        Assert.Equal(part * Width, answer.Overlap!.Value.AlongWidth, 15);
        Assert.Equal(part * Height, answer.Overlap.Value.AlongHeight, 15);
        Assert.Equal(reason, answer.Reason);
    }

    [Fact]
    public void Choose_FractionByDefault_IsFifteenPercent() =>
        Assert.Equal(
            0.15 * Width,
            Ask.Overlap("fraction", Questions.Overlap()).Overlap!.Value.AlongWidth,
            15
        );

    // A tangent of 1 is 3437.7467708 arcmin at the middle of the plane (60 * 180 / pi).
    [Theory]
    [InlineData(0L, 0.0, "a strip of 0 arcmin")]
    [InlineData(20L, 20.0 / 3437.746770784939, "a strip of 20 arcmin")]
    [InlineData(179.6, 179.6 / 3437.746770784939, "a strip of 179.6 arcmin")]
    public void Choose_Arcminutes_IsTheSameStripBothWays(
        object arcminutes,
        double expected,
        string reason
    )
    {
        var answer = Ask.Overlap("arcminutes", Questions.Overlap(), ("overlap_arcmin", arcminutes));

        Assert.Equal(expected, answer.Overlap!.Value.AlongWidth, 15);
        Assert.Equal(expected, answer.Overlap.Value.AlongHeight, 15);
        Assert.Equal(reason, answer.Reason);
    }

    [Fact]
    public void Choose_ArcminutesAsWideAsThePanel_RefusesInWords()
    {
        var answer = Ask.Overlap("arcminutes", Questions.Overlap(), ("overlap_arcmin", 180L));

        Assert.Null(answer.Overlap);
        Assert.Equal(
            "overlap_arcmin = 180 is as wide as the panel; give less than 179.7",
            answer.Reason
        );
    }
}

namespace Framing.Drawing.Tests;

public sealed class TypefacesTests
{
    /// <summary>Everything that charts, names of stars and objects, and plans write.</summary>
    private const string Used =
        "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789"
        + " .,:;!?()[]+-−–…/'’\"&%=×°′″<>≤≥→µ²³"
        + "αβγδεζηθικλμνξοπρστυφχψωςΑΒΓΔΩ"
        + "ÄÖÜäöüßÀÁÂÃÅÆÇÈÉÊËÌÍÎÏÑÒÓÔÕØÙÚÛÝàáâãåæçèéêëìíîïñòóôõøùúûýÿœŒšŠžŽčČřŘłŁ►◄▲▼";

    [Theory]
    [InlineData(nameof(TextWeight.Regular))]
    [InlineData(nameof(TextWeight.Medium))]
    [InlineData(nameof(TextWeight.SemiBold))]
    public void Of_EveryWeight_HasEveryCharacter(string weight)
    {
        var typeface = Typefaces.Of(Enum.Parse<TextWeight>(weight));
        Assert.Equal("Inter", typeface.FamilyName.Split(' ')[0]);
        using var font = typeface.ToFont();
        var missing = string.Concat(Used.Where(letter => !font.ContainsGlyph(letter)));
        Assert.Equal(string.Empty, missing);
    }

    [Fact]
    public void Measure_TwiceTheSize_TwiceTheWidth()
    {
        var width = Typefaces.Measure("+61° 20′", TextWeight.Regular, 12.0);
        Assert.InRange(width, 40.0, 65.0);
        Assert.Equal(2.0 * width, Typefaces.Measure("+61° 20′", TextWeight.Regular, 24.0), 1e-9);
    }
}

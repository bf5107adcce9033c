namespace Framing.Drawing.Tests;

public sealed class PaletteTests
{
    /// <summary>WCAG 2.2, success criterion 1.4.3, level AA.</summary>
    private const double Text = 4.5;

    /// <summary>WCAG 2.2, success criterion 1.4.11, level AA: parts of a picture that must be seen.</summary>
    private const double Graphics = 3.0;

    [Theory]
    [InlineData(PicturePalette.Day)]
    [InlineData(PicturePalette.Night)]
    public void Contrast_Text_AtLeastFourAndAHalf(PicturePalette name)
    {
        var palette = Palette.Of(name);
        foreach (var ink in (Colour[])[palette.PageInk, palette.PageSoft])
        {
            Assert.True(Colour.Contrast(ink, palette.Page) >= Text, $"{ink} on {palette.Page}");
        }

        foreach (var ground in (Colour[])[palette.ChartInside, palette.ChartOutside])
        {
            foreach (
                var ink in (Colour[])
                    [
                        palette.Panel,
                        palette.Target,
                        palette.ObjectText,
                        palette.StarText,
                        palette.Mark,
                    ]
            )
            {
                Assert.True(Colour.Contrast(ink, ground) >= Text, $"{ink} on {ground}");
            }
        }
    }

    [Theory]
    [InlineData(PicturePalette.Day)]
    [InlineData(PicturePalette.Night)]
    public void Contrast_Lines_AtLeastThree(PicturePalette name)
    {
        var palette = Palette.Of(name);
        foreach (var ground in (Colour[])[palette.ChartInside, palette.ChartOutside])
        {
            foreach (
                var ink in (Colour[])
                    [
                        palette.Panel,
                        palette.Target,
                        palette.FallsShort,
                        palette.Outside,
                        palette.Object.Over(ground),
                        palette.Star,
                    ]
            )
            {
                Assert.True(Colour.Contrast(ink, ground) >= Graphics, $"{ink} on {ground}");
            }
        }
    }

    [Theory]
    [InlineData(0x000000, 0xFFFFFF, 21.0)]
    [InlineData(0x777777, 0xFFFFFF, 4.48)]
    [InlineData(0xFF0000, 0x000000, 5.25)]
    public void Contrast_KnownPairs_AsPublished(uint one, uint other, double expected)
    {
        // #777 on white at 4.48 is the usual example of a grey that just fails 4.5; 21 is the greatest there is (WCAG 2.2).
        // Red on black: (0.2126 + 0.05) / 0.05.
        Assert.Equal(expected, Colour.Contrast(Colour.Hex(one), Colour.Hex(other)), 0.01);
    }
}

using Framing.Sky;

namespace Framing.Drawing.Tests;

public sealed class ScaleBarTests
{
    [Theory]
    [InlineData(0.5, "5′")]
    [InlineData(1.5, "10′")]
    [InlineData(6.0, "1°")]
    [InlineData(60.0, "10°")]
    [InlineData(100.0, "20°")]
    public void For_Field_IsRoundAndTrueOnTheSky(double width, string label)
    {
        var picture = SkyPicture.Compose(InventedSky.Scene(40.4, 60.9, width, width * 0.6));
        var bar = picture.Bar;
        Assert.Equal(label, bar.Label);

        // Laid through the middle of the chart, its ends stand that far apart on the sky.
        var middle = new PicturePoint(
            picture.Chart.Left + (picture.Chart.Width / 2.0),
            picture.Chart.Top + (picture.Chart.Height / 2.0)
        );
        var half = new PicturePoint(bar.Length / 2.0, 0.0);
        var span = picture
            .Chart.PictureToSky(middle - half)
            .SeparationTo(picture.Chart.PictureToSky(middle + half));
        Assert.Equal(bar.Span.Arcseconds, span.Arcseconds, 1e-6);
        Assert.InRange(bar.Length, 0.06 * picture.Chart.Width, 0.2 * picture.Chart.Width);
    }

    [Fact]
    public void ToPng_Bar_IsAsLongAsItSays()
    {
        var scene = InventedSky.Scene(40.4, 0.0, stars: 0, panels: false) with
        {
            Objects = [],
            Targets = [],
        };
        var picture = SkyPicture.Compose(scene);
        var pixels = new Pixels(picture.ToPng());
        var label = Assert.Single(picture.Labels, entry => entry.Kind == LabelKind.Scale);

        // The row of the bar: the first below its label in which a long run of its colour stands.
        var mark = Palette.Day.Mark;
        var longest = 0;
        for (var row = (int)label.Bottom; row < label.Bottom + 20; row++)
        {
            var run = 0;
            for (
                var column = picture.Chart.Left;
                column < picture.Chart.Left + picture.Chart.Width;
                column++
            )
            {
                var colour = pixels[column, row];
                run =
                    Math.Abs(colour.Red - mark.Red) + Math.Abs(colour.Blue - mark.Blue) < 60
                        ? run + 1
                        : 0;
                longest = Math.Max(longest, run);
            }
        }

        // The bar ends in the middle of its end ticks, which are 1.6 px wide.
        Assert.Equal(picture.Bar.Length, longest, 2.5);
    }
}

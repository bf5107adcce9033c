using Framing.Sky;

namespace Framing.Imaging.Tests;

public sealed class StarPainterTests
{
    [Theory]
    [InlineData(30.0, 30.0, 2.0)]
    [InlineData(30.37, 29.61, 2.0)]
    [InlineData(30.5, 30.5, 3.5)]
    public void Add_Star_HasItsFluxItsMiddleAndItsWidth(double x, double y, double width)
    {
        var plane = new float[60 * 60];

        new StarPainter(width).Add(plane, 60, new(x, y), 1000.0);

        var (sum, sumX, sumY) = (0.0, 0.0, 0.0);
        for (var i = 0; i < plane.Length; i++)
        {
            sum += plane[i];
            sumX += plane[i] * ((i % 60) + 1);
            sumY += plane[i] * ((i / 60) + 1);
        }

        // The square of 12 half widths, as cut off, holds all but (1 + 144 · 0.26)^-2 = 0.07 % of the profile or less.
        Assert.InRange(sum, 998.0, 1000.5);
        Assert.Equal(x, sumX / sum, 0.01);
        Assert.Equal(y, sumY / sum, 0.01);
        var half = plane.Count(sample => sample > plane.Max() / 2.0);
        Assert.InRange(Math.Sqrt(4.0 * half / Math.PI), width - 0.7, width + 0.9);
    }

    [Fact]
    public void Add_StarOutside_PaintsOnlyWhatReachesIn()
    {
        var plane = new float[10 * 10];
        var painter = new StarPainter(2.0);

        painter.Add(plane, 10, new(-40.0, 5.0), 1000.0);
        Assert.All(plane, sample => Assert.Equal(0f, sample));
        painter.Add(plane, 10, new(-1.0, 5.0), 1000.0);

        Assert.True(plane[(4 * 10) + 0] > plane[(4 * 10) + 5]);
        Assert.True(plane[(4 * 10) + 5] > 0f);
    }

    [Theory]
    [InlineData(0.4)]
    [InlineData(double.NaN)]
    public void StarPainter_WidthOutOfRange_IsRefused(double width) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new StarPainter(width));

    [Fact]
    public void Add_PlaneOfNoWholeRows_IsRefused() =>
        Assert.Throws<ArgumentException>(() =>
            new StarPainter(2.0).Add(new float[7], 3, new(1, 1), 1.0)
        );
}

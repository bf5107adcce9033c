using FsCheck.Xunit;

namespace Framing.Sky.Tests;

public sealed class TanWorldCoordinatesTests
{
    private static readonly Angle Scale = Angle.FromArcseconds(3.82);

    [Property(MaxTest = 1000, Arbitrary = [typeof(Arbitraries)])]
    public void PixelToSky_AndBack_IsTheSamePlace(
        SkyDirection centre,
        PositionAngle up,
        bool mirrored,
        PixelPosition pixel
    )
    {
        var world = World(centre, up, mirrored);
        var sky = world.PixelToSky(pixel);
        Assert.True(world.TrySkyToPixel(sky, out var back));
        Assert.Equal(pixel.X, back.X, 1e-9);
        Assert.Equal(pixel.Y, back.Y, 1e-9);
    }

    [Property(Arbitrary = [typeof(Arbitraries)])]
    public void PixelToSky_ReferencePixel_IsTheReferenceDirection(
        SkyDirection centre,
        PositionAngle up,
        bool mirrored
    )
    {
        var world = World(centre, up, mirrored);
        Assert.Equal(
            0.0,
            world.PixelToSky(world.ReferencePixel).SeparationTo(centre).Radians,
            4e-16
        );
        Assert.Equal(0.0, world.PositionAngleOfYAt(world.ReferencePixel).TurnTo(up).Radians, 1e-12);
    }

    [Property(MaxTest = 500, Arbitrary = [typeof(Arbitraries)])]
    public void PositionAngleOfYAt_AnyPlace_IsTheDirectionOfTheNextPixel(
        SkyDirection centre,
        PositionAngle up,
        bool mirrored,
        PixelPosition pixel
    )
    {
        var world = World(centre, up, mirrored);
        var here = world.PixelToSky(pixel);
        var above = world.PixelToSky(pixel with { Y = pixel.Y + 0.01 });

        // Rounding of the vectors over a hundredth of a pixel (1.9e-7 rad), and the way itself beside a pole.
        var polar = Math.Max(1e-9, 90.0 - here.Declination.Magnitude.Degrees);
        var noise = 4e-9 + (1e-5 / polar);
        Assert.Equal(
            0.0,
            here.PositionAngleTo(above).TurnTo(world.PositionAngleOfYAt(pixel)).Radians,
            noise
        );
    }

    [Property(Arbitrary = [typeof(Arbitraries)])]
    public void WithRowsReversed_AnyPixel_ShowsTheSameSky(
        SkyDirection centre,
        PositionAngle up,
        bool mirrored,
        PixelPosition pixel
    )
    {
        const int rows = 2822;
        var world = World(centre, up, mirrored);
        var reversed = world.WithRowsReversed(rows);
        Assert.Equal(!mirrored, reversed.Matrix.IsMirrored);
        SameSky(
            world.PixelToSky(pixel),
            reversed.PixelToSky(pixel with { Y = rows + 1 - pixel.Y })
        );
    }

    [Property(Arbitrary = [typeof(Arbitraries)])]
    public void Binned_MiddleOfANewPixel_IsTheMiddleOfTheOldOnes(
        SkyDirection centre,
        PositionAngle up,
        bool mirrored,
        byte column,
        byte row
    )
    {
        var world = World(centre, up, mirrored);
        foreach (var factor in new[] { 2, 3, 5 })
        {
            // New pixel k joins the old pixels (k - 1) f + 1 to k f.
            var middle = new PixelPosition(
                ((column - 1) * factor) + ((factor + 1) / 2.0),
                ((row - 1) * factor) + ((factor + 1) / 2.0)
            );
            SameSky(world.PixelToSky(middle), world.Binned(factor).PixelToSky(new(column, row)));
        }
    }

    [Property(Arbitrary = [typeof(Arbitraries)])]
    public void Cropped_AnyPixel_ShowsTheSameSky(
        SkyDirection centre,
        PositionAngle up,
        bool mirrored,
        PixelPosition pixel,
        byte columns,
        byte rows
    )
    {
        var world = World(centre, up, mirrored);
        SameSky(
            world.PixelToSky(pixel),
            world.Cropped(columns, rows).PixelToSky(new(pixel.X - columns, pixel.Y - rows))
        );
    }

    [Property(Arbitrary = [typeof(Arbitraries)])]
    public void TrySkyToPixel_BehindThePlane_IsRefused(SkyDirection centre, PositionAngle up) =>
        Assert.False(
            World(centre, up, mirrored: false)
                .TrySkyToPixel(centre.Offset(up, Angle.FromDegrees(91.0)), out _)
        );

    [Fact]
    public void ToPixelAndToArray_SamePlace_DifferByOne()
    {
        Assert.Equal(new PixelPosition(1.0, 1.0), new ArrayPosition(0.0, 0.0).ToPixel());
        Assert.Equal(new ArrayPosition(9.0, 4.0), new PixelPosition(10.0, 5.0).ToArray());
    }

    [Fact]
    public void New_BrokenParts_Refused()
    {
        var matrix = PixelMatrix.FromPositionAngle(PositionAngle.North, Scale, mirrored: false);
        var centre = SkyDirection.FromDegrees(10.0, 20.0);
        Assert.Throws<ArgumentException>(() =>
            new TanWorldCoordinates(new(1.0, 1.0), centre, default)
        );
        Assert.Throws<ArgumentException>(() =>
            new TanWorldCoordinates(new(double.NaN, 1.0), centre, matrix)
        );
        Assert.Throws<ArgumentException>(() =>
            new TanWorldCoordinates(new(1.0, 1.0), default, matrix)
        );
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(-2.0)]
    [InlineData(double.PositiveInfinity)]
    public void Binned_FactorOutOfRange_Refused(double factor) =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            World(SkyDirection.NorthPole, PositionAngle.North, mirrored: false).Binned(factor)
        );

    private static TanWorldCoordinates World(
        SkyDirection centre,
        PositionAngle up,
        bool mirrored
    ) => new(new(2072.5, 1411.5), centre, PixelMatrix.FromPositionAngle(up, Scale, mirrored));

    private static void SameSky(SkyDirection expected, SkyDirection actual) =>
        Assert.Equal(0.0, actual.SeparationTo(expected).Arcseconds, 1e-9);
}

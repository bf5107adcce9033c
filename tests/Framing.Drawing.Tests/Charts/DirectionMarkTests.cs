using Framing.Sky;

namespace Framing.Drawing.Tests;

public sealed class DirectionMarkTests
{
    [Theory]
    [InlineData(0.0, 0.0, false)]
    [InlineData(60.0, 0.0, false)]
    [InlineData(89.0, 0.0, false)]
    [InlineData(-89.0, 0.0, false)]
    [InlineData(60.0, 121.0, false)]
    [InlineData(60.0, 121.0, true)]
    public void Compose_Mark_PointsNorthAndEastAtItsPlace(double dec, double up, bool mirrored)
    {
        var picture = SkyPicture.Compose(InventedSky.Scene(77.0, dec, up: up, mirrored: mirrored));
        var mark = picture.Mark;
        Assert.True(picture.Chart.Holds(mark.Place));

        // Two pixels along the arrow the declination has grown the most, along the other the right ascension.
        var here = picture.Chart.PictureToSky(mark.Place);
        var north = picture.Chart.PictureToSky(mark.Place + (mark.North * 2.0));
        var east = picture.Chart.PictureToSky(mark.Place + (mark.East * 2.0));
        Assert.Equal(0.0, here.PositionAngleTo(north).TurnTo(PositionAngle.North).Degrees, 0.5);
        Assert.Equal(0.0, here.PositionAngleTo(east).TurnTo(PositionAngle.East).Degrees, 2.0);
    }

    [Fact]
    public void At_MiddleOfNorthUpChart_UpAndLeft()
    {
        var picture = SkyPicture.Compose(InventedSky.Scene(77.0, 40.0));
        var mark = DirectionMark.At(picture.Chart, picture.Chart.Frame.Middle);
        Assert.Equal(-1.0, mark.North.Y, 1e-6);
        Assert.Equal(-1.0, mark.East.X, 1e-6);
    }

    [Fact]
    public void At_MiddleOfMirroredChart_EastRight()
    {
        var picture = SkyPicture.Compose(InventedSky.Scene(77.0, 40.0, mirrored: true));
        var mark = DirectionMark.At(picture.Chart, picture.Chart.Frame.Middle);
        Assert.Equal(-1.0, mark.North.Y, 1e-6);
        Assert.Equal(1.0, mark.East.X, 1e-6);
    }
}

using FsCheck.Xunit;

namespace Framing.Sky.Tests;

public sealed class FieldShapeTests
{
    private static readonly FieldShape Field = new(0.0767, 0.0523);

    [Property(MaxTest = 500, Arbitrary = [typeof(Arbitraries)])]
    public void Corners_AnyPose_SpanTheField(SkyDirection centre, PositionAngle up, bool mirrored)
    {
        var corners = Field.Corners(new(centre, up), mirrored);
        Assert.Equal(4, corners.Count);
        var (topLeft, topRight, bottomRight, bottomLeft) = (
            corners[0],
            corners[1],
            corners[2],
            corners[3]
        );
        Assert.Equal(Field.Diagonal.Radians, topLeft.SeparationTo(bottomRight).Radians, 4e-15);
        Assert.Equal(Field.Diagonal.Radians, topRight.SeparationTo(bottomLeft).Radians, 4e-15);
        var (top, bottom) = (topLeft.MidpointTo(topRight), bottomLeft.MidpointTo(bottomRight));
        var (left, right) = (topLeft.MidpointTo(bottomLeft), topRight.MidpointTo(bottomRight));
        Assert.Equal(Field.Height.Radians, top.SeparationTo(bottom).Radians, 4e-15);
        Assert.Equal(Field.Width.Radians, left.SeparationTo(right).Radians, 4e-15);

        // Up is where it should be, and right lies clockwise from it unless mirrored.
        Assert.Equal(0.0, centre.PositionAngleTo(top).TurnTo(up).Radians, 1e-12);
        Assert.Equal(
            mirrored ? 90.0 : -90.0,
            up.TurnTo(centre.PositionAngleTo(right)).Degrees,
            1e-10
        );
    }

    [Property(MaxTest = 500, Arbitrary = [typeof(Arbitraries)])]
    public void Area_AnyPose_IsThePolygons(SkyDirection centre, PositionAngle up, bool mirrored)
    {
        var polygon = new SkyPolygon(Field.Corners(new(centre, up), mirrored));
        Assert.Equal(Field.Area.Steradians, polygon.Area.Steradians, 1e-15);
        Assert.Equal(0.0, polygon.Middle.SeparationTo(centre).Radians, 1e-12);
        Assert.True(polygon.Contains(centre));
    }

    [Fact]
    public void Area_VeryWideField_IsThePolygonsStill()
    {
        var wide = new FieldShape(6.0, 4.0);
        var pose = new CameraPose(SkyDirection.FromDegrees(80.0, -70.0), PositionAngle.North);
        var polygon = new SkyPolygon(wide.Corners(pose, mirrored: false));
        Assert.Equal(wide.Area.Steradians, polygon.Area.Steradians, 1e-13);
    }
}

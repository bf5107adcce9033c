using FsCheck.Xunit;

namespace Framing.Sky.Tests;

public sealed class TangentPlaneTests
{
    [Property(MaxTest = 2000, Arbitrary = [typeof(Arbitraries)])]
    public void Unproject_ThenProject_IsTheSamePoint(SkyDirection centre, PlanePoint point)
    {
        var plane = new TangentPlane(centre);
        var back = plane.Project(plane.Unproject(point));
        var noise = 1e-15 * (1.0 + (point.Xi * point.Xi) + (point.Eta * point.Eta));
        Assert.Equal(point.Xi, back.Xi, noise);
        Assert.Equal(point.Eta, back.Eta, noise);
    }

    [Property(MaxTest = 2000, Arbitrary = [typeof(Arbitraries)])]
    public void Project_ThenUnproject_IsTheSameDirection(
        SkyDirection centre,
        SkyDirection direction
    )
    {
        var plane = new TangentPlane(centre);
        if (plane.TryProject(direction, out var point))
        {
            Assert.Equal(0.0, plane.Unproject(point).SeparationTo(direction).Radians, 2e-15);
            Assert.True(centre.SeparationTo(direction).Degrees < 90.0);
            Assert.Equal(
                centre.SeparationTo(direction).Radians,
                Math.Atan(double.Hypot(point.Xi, point.Eta)),
                2e-15
            );
        }
        else
        {
            Assert.True(centre.SeparationTo(direction).Radians > (Math.PI / 2.0) - 2e-15);
        }
    }

    [Property(MaxTest = 1000, Arbitrary = [typeof(Arbitraries)])]
    public void Project_GreatCircle_IsAStraightLine(SkyDirection centre, PlanePoint a, PlanePoint b)
    {
        var plane = new TangentPlane(centre);
        var middle = plane.Project(plane.Unproject(a).MidpointTo(plane.Unproject(b)));
        var along = b - a;
        var step = middle - a;
        var off = (along.Xi * step.Eta) - (along.Eta * step.Xi);
        var length = double.Hypot(along.Xi, along.Eta);
        Assert.Equal(0.0, off, 1e-13 * (1.0 + (length * length)));
    }

    [Fact]
    public void Project_EastAndNorth_ArePositive()
    {
        var plane = new TangentPlane(SkyDirection.FromDegrees(359.9, 40.0));
        Assert.True(plane.Project(SkyDirection.FromDegrees(0.1, 40.0)).Xi > 0.0);
        Assert.True(plane.Project(SkyDirection.FromDegrees(359.9, 41.0)).Eta > 0.0);
    }

    [Property(Arbitrary = [typeof(Arbitraries)])]
    public void TryProject_BehindThePlane_IsRefused(SkyDirection centre, PositionAngle towards)
    {
        var plane = new TangentPlane(centre);
        foreach (var degrees in new[] { 90.0, 90.001, 120.0, 180.0 })
        {
            var direction = centre.Offset(towards, Angle.FromDegrees(degrees));
            Assert.False(plane.TryProject(direction, out _));
            Assert.Throws<ArgumentOutOfRangeException>(() => plane.Project(direction));
        }
    }

    [Fact]
    public void New_DefaultDirection_Refused() =>
        Assert.Throws<ArgumentException>(() => new TangentPlane(default));
}

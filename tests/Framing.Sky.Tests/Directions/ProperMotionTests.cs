using FsCheck.Xunit;

namespace Framing.Sky.Tests;

public sealed class ProperMotionTests
{
    [Fact]
    public void Apply_ThreeHundredStars_AgreesWithErfa()
    {
        // Source: ERFA 2.0.0, pmpx; tests/reference/of-date/make_values.py.
        var rows = TestTable.Numbers(
            "proper-motion.csv",
            "ra_deg,dec_deg,pm_east_arcsec,pm_north_arcsec,years,x,y,z"
        );
        Assert.Equal(300, rows.Count);
        foreach (var row in rows)
        {
            var motion = new ProperMotion(
                Angle.FromArcseconds(row[2]),
                Angle.FromArcseconds(row[3])
            );
            var moved = motion.Apply(SkyDirection.FromDegrees(row[0], row[1]), row[4]);
            var expected = SkyDirection.FromVector(new(row[5], row[6], row[7]));
            Assert.InRange(moved.SeparationTo(expected).Arcseconds, 0.0, 1e-9);
        }
    }

    [Property(Arbitrary = [typeof(Arbitraries)])]
    public void Apply_StarAtRest_StaysWhereItIs(SkyDirection star) =>
        Assert.InRange(
            default(ProperMotion).Apply(star, 100.0).SeparationTo(star).Radians,
            0.0,
            1e-15
        );

    [Property(Arbitrary = [typeof(Arbitraries)])]
    public void Apply_MotionTowardsAnAngle_GoesAlongThatGreatCircle(
        SkyDirection star,
        PositionAngle towards
    )
    {
        var (sin, cos) = Math.SinCos(towards.Radians);
        var motion = new ProperMotion(
            Angle.FromArcseconds(10.0 * sin),
            Angle.FromArcseconds(10.0 * cos)
        );

        // Straight ahead in space: after n years the tangent of the way is n times the motion.
        var moved = motion.Apply(star, 1000.0);
        var way = Angle.FromRadians(Math.Atan(Angle.FromArcseconds(10000.0).Radians));
        Assert.InRange(moved.SeparationTo(star.Offset(towards, way)).Radians, 0.0, 1e-14);
    }

    [Fact]
    public void Apply_WrongInput_IsRefused()
    {
        Assert.Throws<ArgumentException>(() => default(ProperMotion).Apply(default, 1.0));
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            default(ProperMotion).Apply(SkyDirection.NorthPole, double.NaN)
        );
    }
}

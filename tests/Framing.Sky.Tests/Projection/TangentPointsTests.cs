using FsCheck.Xunit;

namespace Framing.Sky.Tests;

public sealed class TangentPointsTests
{
    [Property(MaxTest = 2000, Arbitrary = [typeof(Arbitraries)])]
    public void Find_OfAProjectedStar_HoldsTheCentre(SkyDirection centre, PlanePoint point)
    {
        var star = new TangentPlane(centre).Unproject(point);
        var found = TangentPoints.Find(star, point);
        Assert.InRange(found.Count, 1, 2);
        var nearest = found
            .Select(direction => direction.SeparationTo(centre))
            .Aggregate(Angle.Min);

        // Where the two solutions meet, each is known only to the root of the precision.
        Assert.True(nearest.Radians < 1e-7);
    }

    [Property(MaxTest = 2000, Arbitrary = [typeof(Arbitraries)])]
    public void Find_AnyStar_EverySolutionGivesThePoint(SkyDirection star, PlanePoint point)
    {
        var size = 1.0 + (point.Xi * point.Xi) + (point.Eta * point.Eta);
        foreach (var centre in TangentPoints.Find(star, point))
        {
            var back = new TangentPlane(centre).Project(star);
            Assert.Equal(point.Xi, back.Xi, 1e-13 * size);
            Assert.Equal(point.Eta, back.Eta, 1e-13 * size);
        }
    }

    [Theory]
    [InlineData(82.449289, -90.0, 0.19588312546508352, -0.0964337427799753)]
    [InlineData(341.599865, 90.0, 2.962176291293984, 0.14799805789446674)]
    [InlineData(0.0, -90.0, 0.2589837238238668, 0.33749103806686254)]
    public void Find_CentreAtAPole_IsFoundInSpiteOfRounding(
        double ra,
        double dec,
        double xi,
        double eta
    ) => Find_OfAProjectedStar_HoldsTheCentre(SkyDirection.FromDegrees(ra, dec), new(xi, eta));

    [Fact]
    public void Find_FarFromThePoles_IsOne() =>
        Assert.Single(TangentPoints.Find(SkyDirection.FromDegrees(50.0, 20.0), new(0.05, -0.03)));

    [Fact]
    public void Find_TooFarEastBesideThePole_IsNone() =>
        // Every great circle through the pole's surroundings passes the pole within 1 degree; 3 degrees east is too far.
        Assert.Empty(TangentPoints.Find(SkyDirection.FromDegrees(50.0, 89.0), new(0.05, 0.0)));

    [Fact]
    public void Find_StarAtThePole_IsSouthOfIt()
    {
        var found = TangentPoints.Find(SkyDirection.NorthPole, new(0.0, 0.1));
        Assert.Equal(
            90.0 - Angle.FromRadians(Math.Atan(0.1)).Degrees,
            Assert.Single(found).Declination.Degrees,
            1e-12
        );
    }

    [Fact]
    public void Find_NotFinite_Refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            TangentPoints.Find(SkyDirection.NorthPole, new(double.NaN, 0.0))
        );
}

using FsCheck.Xunit;

namespace Framing.Sky.Tests;

public sealed class GalacticFrameTests
{
    // ERFA 2.0.0, eraIcrs2g; see tests/reference/galactic.
    private static readonly IReadOnlyList<double[]> Places = TestTable.Numbers(
        "galactic-places.csv",
        "ra_deg,dec_deg,l_deg,b_deg"
    );

    [Fact]
    public void ToGalactic_PlacesAllOverTheSky_AgreeWithErfa()
    {
        Assert.Equal(210, Places.Count);
        foreach (var row in Places)
        {
            var found = GalacticFrame.ToGalactic(SkyDirection.FromDegrees(row[0], row[1]));

            // Compared as directions: close to a pole the longitude alone says little.
            var expected = SkyDirection.FromDegrees(row[2], row[3]);
            var apart = SkyDirection
                .FromRaDec(found.Longitude, found.Latitude)
                .SeparationTo(expected);
            Assert.InRange(apart.Arcseconds, 0.0, 1e-8);
            Assert.InRange(found.Longitude.Degrees, 0.0, 360.0);
        }
    }

    [Fact]
    public void ToIcrs_GalacticPlaces_AgreeWithErfa()
    {
        Assert.Equal(210, Places.Count);
        foreach (var row in Places)
        {
            var found = GalacticFrame.ToIcrs(
                new(Angle.FromDegrees(row[2]), Angle.FromDegrees(row[3]))
            );
            var apart = found.SeparationTo(SkyDirection.FromDegrees(row[0], row[1]));
            Assert.InRange(apart.Arcseconds, 0.0, 1e-8);
        }
    }

    [Property]
    public void ToIcrs_ToGalacticAgain_IsTheSame(int longitude, int latitude)
    {
        var l = Angle.FromDegrees(longitude % 360_000 / 1000.0);
        var b = Angle.FromDegrees(latitude % 90_001 / 1000.0);
        var direction = GalacticFrame.ToIcrs(new(l, b));
        var back = GalacticFrame.ToIcrs(GalacticFrame.ToGalactic(direction));

        Assert.True(back.SeparationTo(direction).Arcseconds < 1e-9);
        Assert.Equal(b.Degrees, GalacticFrame.ToGalactic(direction).Latitude.Degrees, 1e-9);
    }

    [Fact]
    public void NorthPole_AndCentre_AreAxesOfTheFrame()
    {
        Assert.Equal(
            90.0,
            GalacticFrame.ToGalactic(GalacticFrame.NorthPole).Latitude.Degrees,
            1e-9
        );
        Assert.Equal(0.0, GalacticFrame.ToGalactic(GalacticFrame.Centre).Latitude.Degrees, 1e-12);

        // The origin of 1958 in J2000.0: 17h 45m 37.2s, -28° 56.2′ (from memory).
        Assert.Equal(
            17.0 + (45.0 / 60.0) + (37.2 / 3600.0),
            GalacticFrame.Centre.RightAscension.Hours,
            0.05 / 3600.0
        );
        Assert.Equal(
            -(28.0 + (56.2 / 60.0)),
            GalacticFrame.Centre.Declination.Degrees,
            0.05 / 60.0
        );
    }

    [Fact]
    public void ToGalactic_NoDirection_Throws() =>
        Assert.Throws<ArgumentException>(() => GalacticFrame.ToGalactic(default));

    [Theory]
    [InlineData(90.001)]
    [InlineData(-91.0)]
    public void ToIcrs_BeyondAPole_Throws(double latitude) =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            GalacticFrame.ToIcrs(new(Angle.Zero, Angle.FromDegrees(latitude)))
        );
}

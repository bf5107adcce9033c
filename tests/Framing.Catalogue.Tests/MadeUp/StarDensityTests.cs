using Framing.Sky;

namespace Framing.Catalogue.Tests.MadeUp;

public sealed class StarDensityTests
{
    [Theory]
    [InlineData(40.0, 60.0, 12.5)]
    [InlineData(185.0, 20.0, 14.0)]
    [InlineData(300.0, 35.0, 13.0)]
    [InlineData(80.0, -68.0, 12.0)]
    public void Inside_OfAPieceOfSky_IsWhatTheWholeSkyHoldsThere(
        double ra,
        double dec,
        double faintest
    )
    {
        // The real stars to V 10 and the made-up sky beyond, star by star: drawn from the same counts, each with its own
        // chance (its real stars between V 10 and the end of the catalogue scatter as well).
        var area = SkyPolygonOf(SkyDirection.FromDegrees(ra, dec), 3.0, 0.7);

        var expected = StarDensity.Inside(area, faintest);

        var selection = new StarSelection { FaintestMagnitude = faintest };
        var real = StarCatalogue.Embedded.CountInPolygon(area, selection);
        var madeUp = new MadeUpSky()
            .InCone(area.Middle, area.Radius, selection)
            .Count(star => area.Contains(star.Direction));
        double counted = real + madeUp;
        Assert.InRange(counted, 20.0, 100_000.0);
        Assert.InRange(expected, counted - Room(), counted + Room());

        // Five standard deviations of the count, and 15 % for what the counts themselves are good to.
        double Room() => (5.0 * Math.Sqrt(counted)) + (0.15 * counted);
    }

    [Fact]
    public void Inside_ToTheTenthMagnitude_IsTheCatalogueItself()
    {
        var area = SkyPolygonOf(SkyDirection.FromDegrees(84.0, -5.0), 6.0, 4.0);

        Assert.Equal(
            StarCatalogue.Embedded.CountInPolygon(area, new() { FaintestMagnitude = 9.0 }),
            StarDensity.Inside(area, 9.0)
        );
        Assert.Equal(0.0, StarDensity.BeyondCatalogue(area.Middle, 10.0));
    }

    [Fact]
    public void BeyondCatalogue_GrowsToItsEndAndNoFarther()
    {
        var place = SkyDirection.FromDegrees(84.0, -5.0);
        var last = 0.0;
        for (var magnitude = 10.1; magnitude <= 16.0; magnitude += 0.1)
        {
            var density = StarDensity.BeyondCatalogue(place, magnitude);
            Assert.True(density > last);
            last = density;
        }

        Assert.Equal(
            StarDensity.BeyondCatalogue(place, StarDensity.FaintestMagnitude),
            StarDensity.BeyondCatalogue(place, 20.0)
        );
    }

    private static SkyPolygon SkyPolygonOf(SkyDirection middle, double width, double height)
    {
        var plane = new TangentPlane(middle);
        var (x, y) = (
            Math.Tan(Angle.FromDegrees(width / 2.0).Radians),
            Math.Tan(Angle.FromDegrees(height / 2.0).Radians)
        );
        return new([
            plane.Unproject(new(-x, -y)),
            plane.Unproject(new(x, -y)),
            plane.Unproject(new(x, y)),
            plane.Unproject(new(-x, y)),
        ]);
    }
}

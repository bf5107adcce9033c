using System.Globalization;
using Framing.Catalogue.Tests.Stars;
using Framing.Sky;
using FsCheck.Xunit;

namespace Framing.Catalogue.Tests.MadeUp;

public sealed class MadeUpSkyTests
{
    private static readonly MadeUpSky Usual = new();

    /// <summary>Right ascension, declination, radius, faintest V: the plane, both poles, 0h, high latitude.</summary>
    public static TheoryData<double, double, double, double> Places =>
        new()
        {
            { 83.8, -5.4, 4.0, 13.0 },
            { 305.0, 40.0, 2.0, 14.0 },
            { 0.05, 61.0, 3.0, 13.0 },
            { 192.86, 27.13, 5.0, 14.0 },
            { 10.0, 89.7, 2.5, 14.0 },
            { 200.0, -89.9, 2.5, 14.0 },
        };

    [Theory]
    [MemberData(nameof(Places))]
    public void InCone_PartsOfAField_HaveTheStarsOfTheWholeAndEachOnce(
        double ra,
        double dec,
        double radius,
        double faintest
    )
    {
        var centre = SkyDirection.FromDegrees(ra, dec);
        var selection = new StarSelection { FaintestMagnitude = faintest };
        var whole = Usual.InCone(centre, Angle.FromDegrees(radius), selection);
        Assert.True(whole.Count > 100);
        Assert.Equal(whole.Count, whole.Distinct().Count());

        // Every star of the whole within a smaller cone is in that cone's own answer, and no other.
        foreach (var towards in new[] { 0.0, 70.0, 140.0, 210.0, 280.0 })
        {
            var middle = centre.Offset(
                PositionAngle.FromDegrees(towards),
                Angle.FromDegrees(radius * 0.4)
            );
            var part = Usual.InCone(middle, Angle.FromDegrees(radius * 0.5), selection);
            var cut = whole.Where(star =>
                star.Direction.SeparationTo(middle) <= Angle.FromDegrees(radius * 0.5)
            );
            Assert.Equal(cut, part);
        }
    }

    [Theory]
    [MemberData(nameof(Places))]
    public void InCone_FainterLimit_OnlyAddsStars(
        double ra,
        double dec,
        double radius,
        double faintest
    )
    {
        var centre = SkyDirection.FromDegrees(ra, dec);
        IReadOnlyList<MadeUpStar> To(double limit) =>
            Usual.InCone(centre, Angle.FromDegrees(radius), new() { FaintestMagnitude = limit });

        var all = To(faintest);
        Assert.Equal(all.Where(star => star.VMagnitude <= faintest - 0.7), To(faintest - 0.7));
        Assert.Equal(
            all.Select(star => star.VMagnitude).Order(),
            all.Select(star => star.VMagnitude)
        );
        Assert.All(all, star => Assert.InRange(star.VMagnitude, 10.0, faintest));
        Assert.Equal(
            all.Take(50),
            Usual.InCone(centre, Angle.FromDegrees(radius), new() { MostStars = 50 })
        );
    }

    [Theory]
    [MemberData(nameof(Places))]
    public void InCone_AnyPlace_StarsBeginWhereTheCatalogueEnds(
        double ra,
        double dec,
        double radius,
        double faintest
    )
    {
        var centre = SkyDirection.FromDegrees(ra, dec);
        var stars = Usual.InCone(
            centre,
            Angle.FromDegrees(radius),
            new() { FaintestMagnitude = faintest }
        );
        foreach (var star in stars)
        {
            var limit = MadeUpSky.CatalogueLimitAt(star.Direction);
            Assert.InRange(limit, 10.0, 12.0);

            // The limit is told to 0.01, and so are the stars.
            Assert.True(star.VMagnitude > limit - 0.0051);
        }
    }

    [Fact]
    public void InPolygon_AField_IsTheConeCut()
    {
        var polygon = new SkyPolygon([
            SkyDirection.FromDegrees(35.0, 59.0),
            SkyDirection.FromDegrees(47.0, 59.5),
            SkyDirection.FromDegrees(46.0, 63.0),
            SkyDirection.FromDegrees(36.0, 63.5),
        ]);
        var selection = new StarSelection { FaintestMagnitude = 13.0 };
        var expected = Usual
            .InCone(polygon.Middle, polygon.Radius, selection)
            .Where(star => polygon.Contains(star.Direction))
            .ToList();

        Assert.True(expected.Count > 1000);
        Assert.Equal(expected, Usual.InPolygon(polygon, selection));
    }

    [Fact]
    public void InCone_AnotherSeed_IsAnotherSkyWithAsManyStars()
    {
        var centre = SkyDirection.FromDegrees(305.0, 40.0);
        var radius = Angle.FromDegrees(2.0);
        var selection = new StarSelection { FaintestMagnitude = 14.0 };
        var usual = Usual.InCone(centre, radius, selection);
        var other = new MadeUpSky(11).InCone(centre, radius, selection);

        Assert.Empty(
            usual.Select(star => star.Direction).Intersect(other.Select(star => star.Direction))
        );

        // Five times the scatter of two numbers drawn by chance.
        Assert.InRange(
            Math.Abs(usual.Count - other.Count),
            0,
            5.0 * Math.Sqrt(usual.Count + other.Count)
        );
    }

    [Fact]
    public void InCone_OtherCultureAndThread_IsTheSame()
    {
        var centre = SkyDirection.FromDegrees(83.8, -5.4);
        var radius = Angle.FromDegrees(2.0);
        var here = Usual.InCone(centre, radius);
        var there = new IReadOnlyList<MadeUpStar>[4];
        Parallel.For(
            0,
            there.Length,
            i =>
            {
                CultureInfo.CurrentCulture = CommaForPoint();
                there[i] = new MadeUpSky(MadeUpSky.UsualSeed).InCone(centre, radius);
            }
        );

        Assert.All(there, stars => Assert.Equal(here, stars));
    }

    private static CultureInfo CommaForPoint()
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NumberDecimalSeparator = ",";
        culture.NumberFormat.NegativeSign = "~";
        return culture;
    }

    /// <summary>The stars of one field, kept: a seed is a promise to later versions and other machines.</summary>
    [Fact]
    public void InCone_UsualSeed_IsTheSkyOfEarlierVersions()
    {
        var stars = Usual.InCone(
            SkyDirection.FromDegrees(38.2, 61.5),
            Angle.FromDegrees(0.5),
            new() { MostStars = 3 }
        );
        Assert.Equal(
            "38.087149, +61.751379 V 10.36 B-V 1.70; 39.075001, +61.612151 V 10.37 B-V 0.51; 37.816769, +61.383428 V 10.39 B-V 0.95",
            string.Join(
                "; ",
                stars.Select(star =>
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{star.Direction} V {star.VMagnitude:0.00} B-V {star.BMinusV:0.00}"
                    )
                )
            )
        );
    }

    [Property]
    public void InCone_SmallCones_StayInside(ushort ra, short dec, byte size)
    {
        var centre = SkyDirection.FromDegrees(ra / 65536.0 * 360.0, dec / 32768.0 * 90.0);
        var radius = Angle.FromDegrees(size / 255.0);
        foreach (var star in Usual.InCone(centre, radius, new() { FaintestMagnitude = 12.5 }))
        {
            Assert.True(star.Direction.SeparationTo(centre) <= radius);
        }
    }

    [Fact]
    public void InCone_WholeSkyBrightEnd_HasOnlyWhatTheCatalogueLacks()
    {
        var all = Usual.InCone(
            SkyDirection.NorthPole,
            Angle.FromDegrees(180.0),
            new() { FaintestMagnitude = 10.3 }
        );

        // Tycho-2 has 480,174 stars to V 10.3.
        Assert.InRange(all.Count + StarScan.Stars.Count(star => star.V < 10.3), 456_000, 504_000);
        Assert.All(all, star => Assert.True(star.VMagnitude >= 10.0));
    }

    [Fact]
    public void InCone_NoDirectionOrBadRadius_Throws()
    {
        Assert.Throws<ArgumentException>(() => Usual.InCone(default, Angle.FromDegrees(1.0)));
        Assert.Throws<ArgumentException>(() => MadeUpSky.CatalogueLimitAt(default));
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            Usual.InCone(SkyDirection.NorthPole, Angle.FromDegrees(181.0))
        );
    }
}

using System.Globalization;
using Framing.Sky;

namespace Framing.Catalogue.Tests.Stars;

public sealed class StarCatalogueTests
{
    private static readonly StarCatalogue Stars = StarCatalogue.Embedded;

    [Fact]
    public void Count_WholeTable_IsThatOfTheSource()
    {
        // The upstream table: 643,850 stars, 113,805 with a Hipparcos number, 4,929 without motion, 352 without B-V
        // (tests/reference/catalogue/README.md).
        Assert.Equal(643_850, Stars.Count);
        Assert.Equal(643_850, StarScan.Stars.Count);
        Assert.Equal(113_805, StarScan.Stars.Count(star => star.Hipparcos is not null));
        Assert.Equal(4_929, StarScan.Stars.Count(star => star.MotionMas is null));
        Assert.Equal(352, StarScan.Stars.Count(star => star.Colour is null));
        Assert.Equal(
            643_850,
            Stars.CountInCone(SkyDirection.FromDegrees(10, 10), Angle.FromDegrees(180))
        );
    }

    [Fact]
    public void AllRows_IsTheWholeSky_BrightestFirst()
    {
        var rows = Stars.AllRows();
        var listed = Stars.InCone(SkyDirection.FromDegrees(10, 10), Angle.FromDegrees(180));
        Assert.Equal(listed.Count, rows.Length);
        for (var i = 0; i < rows.Length; i++)
        {
            // Both orders are by V and then by the place in the table, so they agree row by row.
            Assert.Equal(listed[i].VMagnitude, rows[i].VMagnitude, 0.001);
            Assert.Equal(listed[i].Direction.Declination.Degrees, rows[i].DeclinationDegrees, 1e-9);
            Assert.Equal(
                listed[i].ProperMotion?.Declination.Arcseconds * 1000.0 ?? 0.0,
                rows[i].NorthMasPerYear,
                0.01
            );
            Assert.Equal(
                listed[i].ProperMotion?.RightAscensionCosDeclination.Arcseconds * 1000.0 ?? 0.0,
                rows[i].EastMasPerYear,
                0.01
            );
        }

        var first = SkyDirection.FromDegrees(
            rows[0].RightAscensionDegrees,
            rows[0].DeclinationDegrees
        );
        Assert.Equal(listed[0].Direction, first);
    }

    [Fact]
    public void InCone_SampleOfTheSource_EveryRowIsThere()
    {
        var rows = CsvTable.Read("stars-sample.csv");
        foreach (var row in rows)
        {
            var place = SkyDirection.FromDegrees(
                Number(row["ra_deg"])!.Value,
                Number(row["dec_deg"])!.Value
            );

            // Half a step of right ascension: 0.0023 arcsec next to the poles.
            var star = Assert.Single(Stars.InCone(place, Angle.FromArcseconds(0.0025)));
            Assert.Equal(Number(row["v_mag"]), star.VMagnitude);
            Assert.Equal(Number(row["b_minus_v"]), star.BMinusV);
            Assert.Equal(Number(row["hip"]), star.Hipparcos);
            Same(
                Number(row["pm_ra_cosdec_mas_yr"]),
                star.ProperMotion?.RightAscensionCosDeclination
            );
            Same(Number(row["pm_dec_mas_yr"]), star.ProperMotion?.Declination);
        }

        Assert.Equal(1_842, rows.Count);

        static void Same(double? mas, Angle? motion)
        {
            Assert.Equal(mas is null, motion is null);
            if (mas is { } expected)
            {
                Assert.Equal(expected, motion!.Value.Arcseconds * 1000.0, 1e-6);
            }
        }
    }

    public static TheoryData<double, double, double> Cones
    {
        get
        {
            // Poles, right ascension 0h, a point of the band and cell borders, tiny and huge; then random ones.
            var cones = new TheoryData<double, double, double>
            {
                { 0, 90, 1 },
                { 0, -90, 1.3 },
                { 123, 89.2, 1.5 },
                { 300, -88.5, 1.6 },
                { 0, 0, 2 },
                { 359.9999, 45, 3 },
                { 0.0001, -60, 4 },
                { 90, 1.25, 0.7 },
                { 180, 0, 35 },
                { 200, 30, 25 },
                { 77, 77, 13.5 },
                { 83.8, -5.4, 0.01 },
            };
            var random = new Random(20261205);
            for (var i = 0; i < 40; i++)
            {
                var radius = Math.Pow(10, (random.NextDouble() * 2.2) - 1.2);
                cones.Add(
                    random.NextDouble() * 360,
                    Math.Asin((random.NextDouble() * 2) - 1) * 180 / Math.PI,
                    radius
                );
            }

            return cones;
        }
    }

    [Theory]
    [MemberData(nameof(Cones))]
    public void InCone_AgainstEveryStar_IsTheSame(double ra, double dec, double radius)
    {
        var centre = SkyDirection.FromDegrees(ra, dec);
        var wide = Angle.FromDegrees(radius);
        var near = StarScan.Near(centre, wide);
        var expected = near.Where(star => centre.SeparationTo(star.Direction) <= wide);
        AssertSame(expected, Stars.InCone(centre, wide));

        // The same in the year 2060 and down to V 8.5.
        var selection = new StarSelection { JulianYear = 2060.0, FaintestMagnitude = 8.5 };
        var later = near.Where(star =>
                star.V <= 8.5 && centre.SeparationTo(star.At(2060.0)) <= wide
            )
            .ToList();
        AssertSame(later, Stars.InCone(centre, wide, selection));
        Assert.Equal(later.Count, Stars.CountInCone(centre, wide, selection));
    }

    [Fact]
    public void InPolygon_RandomFrames_AreTheSameAsEveryStarAskedOneByOne()
    {
        var random = new Random(7);
        for (var i = 0; i < 40; i++)
        {
            var centre =
                i == 0 ? SkyDirection.NorthPole
                : i == 1 ? SkyDirection.FromDegrees(0, -20)
                : i == 2 ? SkyDirection.SouthPole
                : SkyDirection.FromDegrees(
                    random.NextDouble() * 360,
                    (random.NextDouble() * 179) - 89.5
                );
            var turn = random.NextDouble() * 360;
            var corners = new[] { 34.0, 146.0, 214.0, 326.0 }.Select(angle =>
                centre.Offset(
                    PositionAngle.FromDegrees(angle + turn),
                    Angle.FromDegrees(0.3 + (i % 9))
                )
            );
            var polygon = new SkyPolygon([.. corners]);
            var expected = StarScan
                .Near(polygon.Middle, polygon.Radius)
                .Where(star => polygon.Contains(star.At(2027.0)))
                .ToList();
            var selection = new StarSelection { JulianYear = 2027.0 };
            AssertSame(expected, Stars.InPolygon(polygon, selection));
            Assert.Equal(expected.Count, Stars.CountInPolygon(polygon, selection));
        }
    }

    [Fact]
    public void InCone_AnyField_IsSortedBrightFirst()
    {
        var stars = Stars.InCone(SkyDirection.FromDegrees(310, 44), Angle.FromDegrees(6));
        Assert.True(stars.Count > 1000);
        for (var i = 1; i < stars.Count; i++)
        {
            Assert.True(stars[i - 1].VMagnitude <= stars[i].VMagnitude);
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(37)]
    [InlineData(1_000_000)]
    public void InCone_MostStars_GivesTheFirstOfTheWholeList(int most)
    {
        var centre = SkyDirection.FromDegrees(41, 61);
        var radius = Angle.FromDegrees(5);
        var all = Stars.InCone(centre, radius);
        var some = Stars.InCone(centre, radius, new() { MostStars = most });
        Assert.Equal(all.Take(most), some);
        Assert.Equal(some.Count, Stars.CountInCone(centre, radius, new() { MostStars = most }));
    }

    [Fact]
    public void InCone_FaintestMagnitude_IncludesTheLimitItself()
    {
        var centre = SkyDirection.FromDegrees(41, 61);
        var radius = Angle.FromDegrees(5);
        foreach (var star in Stars.InCone(centre, radius).Where((_, index) => index % 50 == 0))
        {
            var limited = Stars.InCone(
                centre,
                radius,
                new() { FaintestMagnitude = star.VMagnitude }
            );
            Assert.Contains(star, limited);
            Assert.True(limited.All(other => other.VMagnitude <= star.VMagnitude));
        }
    }

    [Fact]
    public async Task InCone_ManyAtOnceInAnyOrder_GivesTheSameAnswers()
    {
        var places = Enumerable
            .Range(0, 24)
            .Select(i => SkyDirection.FromDegrees(15 * i, (7 * i) - 85))
            .ToList();
        var one = places.ConvertAll(place => Stars.InCone(place, Angle.FromDegrees(2)));
        var other = await Task.WhenAll(
            places
                .AsEnumerable()
                .Reverse()
                .Select(place => Task.Run(() => Stars.InCone(place, Angle.FromDegrees(2))))
        );
        Array.Reverse(other);
        for (var i = 0; i < places.Count; i++)
        {
            Assert.Equal(one[i], other[i]);
        }
    }

    [Fact]
    public void InCone_BarnardsStarIn2050_IsWhereItWillBe()
    {
        // Barnard's Star moves 10.3 arcsec a year, nearly due north; J2000 place and motion from memory of Hipparcos
        // values (ESA 1997): 17h 57m 48.50s +4d 41m 36.2s, -798 and +10328 mas a year. Fifty years: 518 arcsec.
        var start = SkyDirection.FromDegrees(269.452_08, 4.693_39);
        var later = SkyDirection.FromDegrees(
            269.452_08 - (0.798 * 50 / 3600 / Math.Cos(4.7 * Math.PI / 180)),
            4.693_39 + (10.328 * 50 / 3600)
        );
        var selection = new StarSelection { JulianYear = 2050.0 };
        var radius = Angle.FromArcseconds(4);
        Assert.Contains(Stars.InCone(later, radius, selection), star => star.Hipparcos == 87937);
        Assert.DoesNotContain(
            Stars.InCone(start, radius, selection),
            star => star.Hipparcos == 87937
        );
        Assert.Contains(Stars.InCone(start, radius), star => star.Hipparcos == 87937);
    }

    [Fact]
    public void WithHipparcos_EveryNumber_IsTheStarThatHasIt()
    {
        foreach (var star in StarScan.Stars.Where(star => star.Hipparcos is not null))
        {
            var found = Stars.WithHipparcos(star.Hipparcos!.Value);
            Assert.NotNull(found);
            Assert.Equal(star.Hipparcos, found.Value.Hipparcos);
            Assert.True(star.Direction.SeparationTo(found.Value.Direction).Arcseconds < 1e-6);
            Assert.Equal(star.V, found.Value.VMagnitude);
        }
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(0)]
    [InlineData(120_417)]
    [InlineData(int.MaxValue)]
    [InlineData(int.MinValue)]
    public void WithHipparcos_UnknownNumber_IsNull(int number) =>
        Assert.Null(Stars.WithHipparcos(number));

    [Fact]
    public void NameOf_EveryNamedStar_IsAsInTheSource()
    {
        var rows = CsvTable.Read("star-names.csv");
        foreach (var row in rows)
        {
            var name = StarCatalogue.NameOf(int.Parse(row["hip"], CultureInfo.InvariantCulture));
            Assert.NotNull(name);
            Assert.Equal(row["proper_name"], name.Proper ?? string.Empty);
            Assert.Equal(row["bayer"], name.Bayer ?? string.Empty);
            Assert.Equal(row["bayer_letter"], name.BayerLetter ?? string.Empty);
            Assert.Equal(Number(row["flamsteed"]), name.Flamsteed);
            Assert.Equal(row["constellation"], name.Constellation ?? string.Empty);
        }

        Assert.Equal(3_550, rows.Count);
        Assert.Equal(3_550, NameTable.Embedded.StarCount);
        Assert.Null(StarCatalogue.NameOf(1));
    }

    // Hipparcos catalogue (ESA 1997), places brought to J2000.0; from memory. HIP, RA, Dec, V, B-V, motion in mas a year.
    [Theory]
    [InlineData(32349, "6 45 8.92", "-16 42 58.0", -1.44, 0.01, -546, -1223)]
    [InlineData(91262, "18 36 56.34", "38 47 1.3", 0.03, 0.00, 201, 287)]
    [InlineData(24436, "5 14 32.27", "-8 12 5.9", 0.18, -0.03, 2, -1)]
    [InlineData(27989, "5 55 10.31", "7 24 25.4", 0.45, 1.50, 27, 11)]
    [InlineData(69673, "14 15 39.67", "19 10 56.7", -0.05, 1.24, -1093, -2000)]
    [InlineData(24608, "5 16 41.36", "45 59 52.8", 0.08, 0.80, 76, -427)]
    [InlineData(97649, "19 50 47.00", "8 52 6.0", 0.76, 0.22, 537, 386)]
    [InlineData(102098, "20 41 25.92", "45 16 49.2", 1.25, 0.09, 2, 2)]
    [InlineData(49669, "10 8 22.31", "11 58 2.0", 1.36, -0.09, -249, 5)]
    [InlineData(11767, "2 31 49.09", "89 15 50.8", 1.97, 0.64, 44, -12)]
    [InlineData(30438, "6 23 57.11", "-52 41 44.4", -0.62, 0.16, 20, 24)]
    [InlineData(113368, "22 57 39.05", "-29 37 20.1", 1.17, 0.15, 329, -164)]
    [InlineData(100453, "20 22 13.70", "40 15 24.0", 2.23, 0.67, 2, -1)]
    public void WithHipparcos_WellKnownStars_HavePublishedValues(
        int hipparcos,
        string ra,
        string dec,
        double v,
        double colour,
        double east,
        double north
    )
    {
        var star = Stars.WithHipparcos(hipparcos);
        Assert.NotNull(star);
        var place = SkyDirection.FromDegrees(15 * Sexagesimal(ra), Sexagesimal(dec));
        Assert.True(place.SeparationTo(star.Value.Direction).Arcseconds < 0.5);
        Assert.Equal(v, star.Value.VMagnitude, 0.06);
        Assert.Equal(colour, star.Value.BMinusV!.Value, 0.03);
        var motion = star.Value.ProperMotion!.Value;
        Assert.Equal(east, motion.RightAscensionCosDeclination.Arcseconds * 1000, 15.0);
        Assert.Equal(north, motion.Declination.Arcseconds * 1000, 15.0);
    }

    [Fact]
    public void InCone_NoDirectionOrImpossibleRadius_IsRefused()
    {
        var pole = SkyDirection.NorthPole;
        Assert.Throws<ArgumentException>(() => Stars.InCone(default, Angle.FromDegrees(1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Stars.InCone(pole, Angle.FromDegrees(-1)));
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            Stars.InCone(pole, Angle.FromDegrees(181))
        );
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            new StarSelection { FaintestMagnitude = double.NaN }
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => new StarSelection { MostStars = -1 });
        Assert.Throws<ArgumentOutOfRangeException>(() => new StarSelection { JulianYear = 3001 });
    }

    private static void AssertSame(
        IEnumerable<StarScan.ScannedStar> expected,
        IReadOnlyList<CatalogueStar> found
    )
    {
        var wanted = expected.Select(Text).Order(StringComparer.Ordinal);
        var have = found
            .Select(star =>
                Text(new(star.Direction, null, star.VMagnitude, star.BMinusV, star.Hipparcos))
            )
            .Order(StringComparer.Ordinal);
        Assert.Equal(wanted, have);

        static string Text(StarScan.ScannedStar star) =>
            string.Create(
                CultureInfo.InvariantCulture,
                $"{star.Direction} {star.V} {star.Colour} {star.Hipparcos}"
            );
    }

    private static double? Number(string text) =>
        text.Length == 0 ? null : double.Parse(text, CultureInfo.InvariantCulture);

    private static double Sexagesimal(string text)
    {
        var parts = text.Split(' ');
        var values = parts
            .Select(part => Math.Abs(double.Parse(part, CultureInfo.InvariantCulture)))
            .ToList();
        var value = values[0] + (values[1] / 60) + (values[2] / 3600);
        return text[0] == '-' ? -value : value;
    }
}

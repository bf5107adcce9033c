using System.Globalization;
using Framing.Sky;

namespace Framing.Catalogue.Tests.Objects;

public sealed class ObjectCatalogueRegionTests
{
    private static readonly ObjectCatalogue Objects = ObjectCatalogue.Embedded;

    private static readonly IReadOnlyList<Row> Rows =
    [
        .. CsvTable.Read("deep-sky.csv").Select(cells => new Row(cells)),
    ];

    [Fact]
    public void InCone_WholeSky_EveryRowIsAsInTheSource()
    {
        var all = Objects
            .InCone(SkyDirection.NorthPole, Angle.FromDegrees(180))
            .ToDictionary(o => o.Id, StringComparer.Ordinal);
        Assert.Equal(5419, all.Count);
        foreach (var row in Rows)
        {
            var found = all[row.Cells["id"]];
            Assert.Equal(row.Cells["name"], found.Name ?? string.Empty);
            Assert.Equal(
                row.Cells["other_ids"]
                    .Split('|', StringSplitOptions.RemoveEmptyEntries)
                    .Order(StringComparer.Ordinal),
                found.OtherIds.Concat(found.Members).Order(StringComparer.Ordinal)
            );
            Assert.Equal(
                row.Cells["type"].Replace("-", "", StringComparison.Ordinal),
                found.Type.ToString(),
                ignoreCase: true
            );
            Assert.True(row.Place.SeparationTo(found.Direction).Arcseconds < 1e-6);
            Near(row.Major, found.Major?.Arcminutes);
            Near(row.Number("minor_arcmin"), found.Minor?.Arcminutes);
            Near(row.Number("pa_deg"), found.MajorAxis?.Degrees);
            Near(row.Number("v_mag"), found.VMagnitude);
            Assert.Equal(
                row.Cells["size_quality"].Length == 0 ? "none" : row.Cells["size_quality"],
                found.SizeQuality.ToString(),
                ignoreCase: true
            );
            Assert.Equal(row.Cells["source"], found.Source);
        }

        static void Near(double? expected, double? actual)
        {
            Assert.Equal(expected is null, actual is null);
            Assert.Equal(expected ?? 0.0, actual ?? 0.0, 1e-9);
        }
    }

    [Fact]
    public void InCone_RandomCones_AreTheSameAsEveryRowAskedOneByOne()
    {
        var random = new Random(3);
        for (var i = 0; i < 200; i++)
        {
            var centre =
                i == 0 ? SkyDirection.SouthPole
                : i == 1 ? SkyDirection.NorthPole
                : SkyDirection.FromDegrees(
                    i % 10 == 0 ? 0 : random.NextDouble() * 360,
                    Math.Asin((random.NextDouble() * 2) - 1) * 180 / Math.PI
                );
            var radius = Angle.FromDegrees(random.NextDouble() * (i % 20 == 0 ? 90 : 8));
            var smallest = i % 3 == 0 ? Angle.Zero : Angle.FromArcminutes(random.Next(60));
            var expected = Rows.Where(row =>
                centre.SeparationTo(row.Place) <= radius
                && (smallest == Angle.Zero || row.Major >= smallest.Arcminutes - 1e-9)
            );
            var found = Objects.InCone(centre, radius, new() { SmallestMajor = smallest });
            Assert.Equal(
                expected.Select(row => row.Cells["id"]).Order(StringComparer.Ordinal),
                found.Select(o => o.Id).Order(StringComparer.Ordinal)
            );
            AssertLargestFirst(found);
            Assert.Equal(
                found.Take(3).Select(o => o.Id),
                Objects
                    .InCone(centre, radius, new() { SmallestMajor = smallest, MostObjects = 3 })
                    .Select(o => o.Id),
                StringComparer.Ordinal
            );
        }
    }

    [Fact]
    public void InPolygon_Reaching_AddsWhatTouchesTheFrame()
    {
        var random = new Random(11);
        var added = 0;
        for (var i = 0; i < 30; i++)
        {
            var centre = SkyDirection.FromDegrees(
                random.NextDouble() * 360,
                (random.NextDouble() * 178) - 89
            );
            var corners = new[] { 40.0, 140.0, 220.0, 320.0 }.Select(angle =>
                centre.Offset(PositionAngle.FromDegrees(angle + i), Angle.FromDegrees(2.5))
            );
            var polygon = new SkyPolygon([.. corners]);
            var inside = Objects.InPolygon(polygon);
            Assert.Equal(
                Rows.Where(row => polygon.Contains(row.Place))
                    .Select(row => row.Cells["id"])
                    .Order(StringComparer.Ordinal),
                inside.Select(o => o.Id).Order(StringComparer.Ordinal)
            );

            // Whether a circle touches a frame, asked of points along its sides every 0.02 degrees.
            var border = Border(polygon, 250);
            var reaching = Objects.InPolygon(polygon, new() { Reaching = true });
            var ids = reaching.Select(o => o.Id).ToHashSet(StringComparer.Ordinal);
            foreach (var row in Rows)
            {
                if (row.Major is not { } major || inside.Any(o => o.Id == row.Cells["id"]))
                {
                    continue;
                }

                // Far beyond the corners no look at the border is needed.
                var far = polygon.Middle.SeparationTo(row.Middle) - polygon.Radius;
                if (far.Arcminutes > (major / 2.0) + 1.0)
                {
                    Assert.DoesNotContain(row.Cells["id"], ids);
                    continue;
                }

                var distance = polygon.Contains(row.Middle)
                    ? 0.0
                    : border.Min(point => point.SeparationTo(row.Middle).Arcminutes);
                var slack = distance - (major / 2.0);
                if (Math.Abs(slack) > 1.0)
                {
                    Assert.Equal(slack < 0.0, ids.Contains(row.Cells["id"]));
                }
            }

            Assert.Superset(inside.Select(o => o.Id).ToHashSet(StringComparer.Ordinal), ids);
            added += reaching.Count - inside.Count;
            AssertLargestFirst(reaching);
        }

        Assert.True(added > 10, FormattableString.Invariant($"only {added} reach in"));
    }

    [Fact]
    public void MiddleOfExtent_LagoonNebula_IsTheBoxAndNotTheCataloguedPoint()
    {
        // M 8: catalogued place 16 arcmin from the middle of the box (source column of the table).
        var lagoon = Assert.IsType<DeepSkyObject>(Objects.Find("M 8").Entry);
        Assert.Equal(271.176, lagoon.MiddleOfExtent.RightAscension.Degrees, 1e-9);
        Assert.Equal(-24.268, lagoon.MiddleOfExtent.Declination.Degrees, 1e-9);
        Assert.InRange(lagoon.MiddleOfExtent.SeparationTo(lagoon.Direction).Arcminutes, 15.0, 17.0);
        var heart = Assert.IsType<DeepSkyObject>(Objects.Find("IC 1805").Entry);
        Assert.Equal(heart.Direction, heart.MiddleOfExtent);
    }

    [Fact]
    public void Members_Groups_AreFoundThemselves()
    {
        var heartAndSoul = Assert.IsType<DeepSkyObject>(Objects.Find("IC 1805+IC 1848").Entry);
        Assert.Equal(["IC 1805", "IC 1848"], heartAndSoul.Members);
        Assert.Empty(heartAndSoul.OtherIds);
        var doubleCluster = Assert.IsType<DeepSkyObject>(Objects.Find("C 14").Entry);
        Assert.Equal(["NGC 869", "NGC 884"], doubleCluster.Members);
        Assert.Equal(["C 14"], doubleCluster.OtherIds);
    }

    // Centres in degrees, from memory of the usual handbooks, good to a few arcmin; an independent look at a dozen places.
    [Theory]
    [InlineData("M 31", 10.68, 41.27, 178)]
    [InlineData("M 42", 83.82, -5.39, 74)]
    [InlineData("M 13", 250.42, 36.46, 20)]
    [InlineData("M 57", 283.40, 33.03, 1.4)]
    [InlineData("M 45", 56.75, 24.12, 116)]
    [InlineData("M 104", 190.00, -11.62, 9)]
    [InlineData("NGC 5139", 201.70, -47.48, 55)]
    [InlineData("NGC 7293", 337.41, -20.84, 25)]
    [InlineData("NGC 869", 34.75, 57.13, 30)]
    [InlineData("LMC", 80.89, -69.76, 646)]
    [InlineData("B 33", 85.25, -2.46, 6)]
    [InlineData("NGC 253", 11.89, -25.29, 27)]
    public void Find_WellKnownObjects_StandWherePublished(
        string id,
        double ra,
        double dec,
        double majorArcmin
    )
    {
        var found = Assert.IsType<DeepSkyObject>(Objects.Find(id).Entry);
        Assert.True(
            SkyDirection.FromDegrees(ra, dec).SeparationTo(found.Direction).Arcminutes < 4.0
        );
        Assert.Equal(majorArcmin, found.Major!.Value.Arcminutes, 0.15 * majorArcmin);
    }

    private static List<SkyDirection> Border(SkyPolygon polygon, int steps)
    {
        var points = new List<SkyDirection>();
        for (var i = 0; i < polygon.Corners.Count; i++)
        {
            var from = polygon.Corners[i];
            var to = polygon.Corners[(i + 1) % polygon.Corners.Count];
            var side = from.SeparationTo(to);
            var direction = from.PositionAngleTo(to);
            for (var k = 0; k < steps; k++)
            {
                points.Add(from.Offset(direction, side * ((double)k / steps)));
            }
        }

        return points;
    }

    private static void AssertLargestFirst(IReadOnlyList<DeepSkyObject> objects)
    {
        for (var i = 1; i < objects.Count; i++)
        {
            Assert.True(
                (objects[i - 1].Major ?? Angle.FromDegrees(-1))
                    >= (objects[i].Major ?? Angle.FromDegrees(-1))
            );
        }
    }

    private sealed class Row(IReadOnlyDictionary<string, string> cells)
    {
        public IReadOnlyDictionary<string, string> Cells { get; } = cells;

        public SkyDirection Place { get; } =
            SkyDirection.FromDegrees(Parse(cells["ra_deg"]), Parse(cells["dec_deg"]));

        public double? Major => Number("major_arcmin");

        /// <summary>The middle of the box, where the source names one.</summary>
        public SkyDirection Middle
        {
            get
            {
                const string Mark = "centre of the box ";
                var source = Cells["source"];
                var at = source.IndexOf(Mark, StringComparison.Ordinal);
                if (at < 0)
                {
                    return Place;
                }

                var parts = source[(at + Mark.Length)..].Split(' ');
                return SkyDirection.FromDegrees(Parse(parts[0]), Parse(parts[1]));
            }
        }

        public double? Number(string column) =>
            Cells[column].Length == 0 ? null : Parse(Cells[column]);

        private static double Parse(string text) =>
            double.Parse(text, CultureInfo.InvariantCulture);
    }
}

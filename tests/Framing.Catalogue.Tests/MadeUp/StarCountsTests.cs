using System.Globalization;
using Framing.Catalogue.Tests.Stars;
using Framing.Sky;

namespace Framing.Catalogue.Tests.MadeUp;

/// <summary>The whole sky, real stars and made-up ones together, is counted and held against published counts.</summary>
/// <remarks>Sources and how the table was made: tests/reference/star-counts.</remarks>
public sealed class StarCountsTests
{
    private const double Allowed = 0.15;

    private static readonly Lazy<CountedSky> Counted = new(CountedSky.Count);

    /// <summary>Real counts by latitude: Tycho-2, Høg et al. 2000, A&amp;A 355, L27.</summary>
    [Fact]
    public void RealAndMadeUp_ByLatitudeToV11_AgreeWithTycho2()
    {
        var rows = Rows("tycho-2").Where(row => row.WholeCircle).ToList();

        Assert.Equal(42, rows.Count);
        Assert.Equal([6, 7, 8, 9, 10, 11], rows.Select(row => row.V).Distinct());
        AssertAgree(rows);
    }

    /// <summary>Real counts to V 11 around the Milky Way, in 12 longitudes and two latitudes.</summary>
    [Fact]
    public void RealAndMadeUp_AlongTheMilkyWayToV11_AgreeWithTycho2()
    {
        var rows = Rows("tycho-2").Where(row => !row.WholeCircle).ToList();

        Assert.Equal(24, rows.Count);
        AssertAgree(rows);
    }

    /// <summary>
    /// Deeper, above 20 degrees of latitude: the real counts to V 11, grown as the printed fit of Bahcall and Soneira (1980,
    /// ApJS 44, 73; from memory) says.
    /// </summary>
    [Fact]
    public void RealAndMadeUp_ByLatitudeFromV12ToV14_GrowAsBahcallAndSoneira()
    {
        var rows = Rows("tycho-2 to V 11, grown as Bahcall & Soneira");

        Assert.Equal(12, rows.Count);
        Assert.Equal([12, 13, 14], rows.Select(row => row.V).Distinct());
        AssertAgree(rows);
    }

    /// <summary>
    /// The whole sky: Seares and van Rhijn 1925 (Mount Wilson Contr. 301), van Rhijn 1929 (Groningen Publ. 43), visual
    /// magnitudes, from memory. With the latitudes above 20 degrees held elsewhere this holds the Milky Way, too.
    /// </summary>
    [Fact]
    public void RealAndMadeUp_WholeSkyFromV6ToV14_AgreeWithSearesAndVanRhijn()
    {
        var rows = Rows("seares & van rhijn").Where(row => row.V <= 14).ToList();

        Assert.Equal([6, 7, 8, 9, 10, 11, 12, 13, 14], rows.Select(row => row.V));
        AssertAgree(rows);
    }

    [Fact]
    public void MadeUp_WholeSky_IsNowhereBrighterThanTheCatalogueEnds()
    {
        var sky = Counted.Value;

        Assert.True(sky.MadeUpStars > 2_500_000);
        Assert.Equal(0, sky.TooBright);
        Assert.Equal(12.0, sky.FaintestLimit);
    }

    private static List<Row> Rows(string source) =>
        [
            .. CsvTable
                .Read("star-counts.csv")
                .Where(row => row["source"] == source)
                .Select(row =>
                {
                    double Number(string name) =>
                        double.Parse(row[name], CultureInfo.InvariantCulture);
                    return new Row(
                        (int)Number("l_from"),
                        (int)Number("l_to"),
                        (int)Number("b_from"),
                        (int)Number("b_to"),
                        (int)Number("v"),
                        Number("per_sq_deg")
                    );
                }),
        ];

    private static void AssertAgree(List<Row> rows)
    {
        var wrong = new List<string>();
        foreach (var row in rows)
        {
            var ratio = Counted.Value.PerSquareDegree(row) / row.PerSquareDegree;
            var text = string.Create(
                CultureInfo.InvariantCulture,
                $"l {row.West}-{row.East}, |b| {row.Low}-{row.High}, V {row.V}: {ratio:0.000} of what is published"
            );
            TestContext.Current.SendDiagnosticMessage(text);
            if (Math.Abs(ratio - 1.0) > Allowed)
            {
                wrong.Add(text);
            }
        }

        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    private sealed record Row(int West, int East, int Low, int High, int V, double PerSquareDegree)
    {
        public bool WholeCircle => East - West == 360;
    }

    /// <summary>Stars brighter than whole magnitudes in fields of 30 degrees of longitude and 5 of latitude.</summary>
    private sealed class CountedSky
    {
        private const int Faintest = 14;

        // Of the made-up stars those of every fourth cell are counted, and stand for four.
        private const int CellsPerCounted = 4;

        private readonly int[,,] stars = new int[12, 18, Faintest + 1];

        public int MadeUpStars { get; private set; }

        public int TooBright { get; private set; }

        public double FaintestLimit { get; private set; }

        public static CountedSky Count()
        {
            var sky = new CountedSky();
            foreach (var star in StarScan.Stars)
            {
                sky.Add(star.Direction, star.V, 1);
            }

            for (var number = 0; number < CountingCells.Count; number += CellsPerCounted)
            {
                var limit = CountingCells.LimitOf(number);
                sky.FaintestLimit = Math.Max(sky.FaintestLimit, limit);
                var cell = new MadeUpCell(MadeUpSky.UsualSeed, number);
                while (cell.TryNext(Faintest, out var star))
                {
                    sky.MadeUpStars++;
                    sky.TooBright += star.VMagnitude < limit - 0.0051 ? 1 : 0;
                    sky.Add(star.Direction, star.VMagnitude, CellsPerCounted);
                }
            }

            return sky;
        }

        public double PerSquareDegree(Row row)
        {
            var sum = 0.0;
            for (var l = row.West / 30; l < row.East / 30; l++)
            {
                for (var b = row.Low / 5; b < row.High / 5; b++)
                {
                    sum += stars[l, b, row.V];
                }
            }

            var heights =
                Math.Sin(Angle.FromDegrees(row.High).Radians)
                - Math.Sin(Angle.FromDegrees(row.Low).Radians);
            return sum / (2.0 * heights * (row.East - row.West) * Angle.FromRadians(1.0).Degrees);
        }

        private void Add(SkyDirection direction, double v, int weight)
        {
            // By the formulas of the pole, not by the frame under test (pole: SP-1200, vol. 1, sect. 1.5.3).
            var galactic = Galactic(direction.Vector);
            var l = Math.Min((int)(galactic.L / 30.0), 11);
            var b = Math.Min((int)(Math.Abs(galactic.B) / 5.0), 17);
            for (var whole = Math.Max(0, (int)Math.Floor(v) + 1); whole <= Faintest; whole++)
            {
                stars[l, b, whole] += weight;
            }
        }

        private static (double L, double B) Galactic(Vector3D v)
        {
            var sinB = v.Dot(Pole);
            var up = v - (Pole * sinB);
            var l = Math.Atan2(up.Dot(SixHours), up.Dot(Origin)) * 180.0 / Math.PI;
            return ((l + 360.0) % 360.0, Math.Asin(Math.Clamp(sinB, -1.0, 1.0)) * 180.0 / Math.PI);
        }

        private static readonly Vector3D Pole = SkyDirection
            .FromDegrees(192.85948, 27.12825)
            .Vector;
        private static readonly Vector3D Origin = SkyDirection
            .FromDegrees(266.40499, -28.93617)
            .Vector;
        private static readonly Vector3D SixHours = Pole.Cross(Origin);
    }
}

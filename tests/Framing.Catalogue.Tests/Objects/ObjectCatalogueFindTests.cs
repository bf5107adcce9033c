using System.Globalization;
using Framing.Sky;

namespace Framing.Catalogue.Tests.Objects;

public sealed class ObjectCatalogueFindTests
{
    private static readonly IReadOnlyList<IReadOnlyDictionary<string, string>> Rows = CsvTable.Read(
        "deep-sky.csv"
    );

    private static readonly ObjectCatalogue Objects = ObjectCatalogue.Embedded;

    [Fact]
    public void Count_AllRows_IsThatOfTheTable()
    {
        Assert.Equal(5419, Rows.Count);
        Assert.Equal(5419, Objects.Count);
    }

    [Fact]
    public void Find_EveryMessierNumber_LandsOnItsRow()
    {
        var found = 0;
        for (var number = 1; number <= 110; number++)
        {
            // All Messier numbers are main designations: the row is the one that says so itself.
            var row = Rows.Single(r => r["id"] == Text($"M {number}"));
            AssertRow(row, $"m{number}", $"M {number}", $"messier {number:000}", $"M-{number:00}");
            found++;
        }

        Assert.Equal(110, found);
    }

    [Fact]
    public void Find_EveryCaldwellNumber_LandsOnItsRow()
    {
        var found = 0;
        for (var number = 1; number <= 109; number++)
        {
            var row = RowWith(Text($"C {number}"));
            AssertRow(
                row,
                $"c{number}",
                $"C {number:000}",
                $"Caldwell{number}",
                $"caldwell {number}"
            );
            found++;
        }

        Assert.Equal(109, found);
    }

    [Fact]
    public void Find_EverySharplessNumber_LandsOnItsRow()
    {
        var found = 0;
        for (var number = 1; number <= 313; number++)
        {
            var row = RowWith(Text($"Sh2-{number}"));
            AssertRow(
                row,
                $"sh2-{number}",
                $"Sh2 {number}",
                $"SH 2-{number:000}",
                $"sh 2 {number}",
                $"sharpless {number}",
                $"Sharpless 2-{number}"
            );
            found++;
        }

        Assert.Equal(313, found);
    }

    [Fact]
    public void Find_EveryLargeTarget_LandsOnItsRow()
    {
        var targets = CsvTable.Read("large-targets.csv");
        foreach (var target in targets)
        {
            var row = Rows.Single(r => r["id"] == target["id"]);
            AssertRow(row, $"{target["id"]}");

            // Names of the finished table; those it took over from here are the same.
            var entry = Objects.Find(row["name"]).Entry;
            if (row["name"].Length > 0)
            {
                Assert.Equal(target["id"], entry?.Id);
            }

            if (target["name"].Length > 0)
            {
                Assert.Equal(target["id"], Objects.Find(target["name"]).Entry?.Id);
            }
        }

        Assert.Equal(99, targets.Count);
    }

    [Fact]
    public void Find_EveryDesignation_LandsOnItsRow()
    {
        var count = 0;
        foreach (var row in Rows)
        {
            AssertRow(row, $"{row["id"]}");
            count++;
            if (row["type"] is "group" or "galaxy-group")
            {
                continue;
            }

            foreach (var other in Others(row))
            {
                AssertRow(row, $"{other}");
                count++;
            }
        }

        // 5,419 main designations and the other ones of all rows that are not groups.
        Assert.Equal(
            5419
                + Rows.Where(r => r["type"] is not ("group" or "galaxy-group"))
                    .Sum(r => Others(r).Length),
            count
        );
    }

    private static void AssertRow(
        IReadOnlyDictionary<string, string> row,
        params FormattableString[] spellings
    )
    {
        foreach (var spelling in spellings)
        {
            var words = Text(spelling);
            var result = Objects.Find(words);
            Assert.True(result.IsFound, $"{words} is not found");
            var entry = Assert.IsType<DeepSkyObject>(result.Entry);
            Assert.Equal(row["id"], entry.Id);
            Assert.Equal(Number(row["ra_deg"]), entry.Direction.RightAscension.Degrees, 1e-9);
            Assert.Equal(Number(row["dec_deg"]), entry.Direction.Declination.Degrees, 1e-9);
        }
    }

    private static string[] Others(IReadOnlyDictionary<string, string> row) =>
        row["other_ids"].Split('|', StringSplitOptions.RemoveEmptyEntries);

    /// <summary>The one row that carries a designation; groups name their members, which have rows of their own.</summary>
    private static IReadOnlyDictionary<string, string> RowWith(string designation) =>
        Rows.FirstOrDefault(r => r["id"] == designation)
        ?? Rows.Where(r => Others(r).Contains(designation, StringComparer.Ordinal))
            .OrderBy(r => r["type"] is "group" or "galaxy-group" ? 1 : 0)
            .First();

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}

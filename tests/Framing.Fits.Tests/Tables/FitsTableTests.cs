using System.Text.Json;

namespace Framing.Fits.Tests;

/// <summary>Tables written by astropy against what cfitsio reads of them (tests/reference/fits/tables.py).</summary>
public sealed class FitsTableTests
{
    [Fact]
    public void ReadCells_EveryKindOfColumn_IsWhatCfitsioReads()
    {
        using var file = FitsFile.Open(TestData.Path("tables", "tables.fits"));
        var tables = file.ReadTables();
        Assert.Equal(["STARS", "TEXTS"], tables.Select(table => table.Name));
        var cells = 0;
        foreach (var answer in TestData.Json("tables", "answers.json").EnumerateArray())
        {
            var table = tables.Single(table =>
                table.Name == answer.GetProperty("table").GetString()
            );
            Assert.Equal(9, table.RowCount);
            var column = table.Find(answer.GetProperty("column").GetString()!.ToUpperInvariant())!;
            Assert.Equal(answer.GetProperty("unit").GetString(), column.Unit);
            var row = 0;
            foreach (var expected in answer.GetProperty("cells").EnumerateArray())
            {
                AssertCell(table, column, row++, expected);
                cells++;
            }
        }

        Assert.Equal(24 * 9, cells);
    }

    [Fact]
    public void ReadColumn_EveryNumber_IsTheFirstOfItsCell()
    {
        using var file = FitsFile.Open(TestData.Path("tables", "tables.fits"));
        var held = 0;
        foreach (var table in file.ReadTables())
        {
            foreach (var column in table.Columns.Where(c => c.Kind != FitsColumnKind.Text))
            {
                var values = table.ReadColumn(column);
                for (var row = 0; row < values.Length; row++)
                {
                    var cell = table.ReadNumbers(column, row);
                    Assert.Equal(cell.Length > 0 ? cell[0].Number : double.NaN, values[row]);
                    held++;
                }
            }
        }

        Assert.Equal(22 * 9, held);
    }

    [Fact]
    public void Columns_OfACube_KnowTheirShape()
    {
        using var file = FitsFile.Open(TestData.Path("tables", "tables.fits"));
        var table = file.ReadTables()[0];

        Assert.Equal([3, 2], table.Find("cube")!.Shape);
        Assert.Equal(6, table.Find("cube")!.Count);
        Assert.True(table.Find("vdouble")!.IsVariable);
        Assert.Null(table.Find("nothing"));
        Assert.Throws<ArgumentException>(() => table.ReadColumn(table.Find("name")!));
        Assert.Throws<ArgumentException>(() => table.ReadText(table.Find("short")!, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => table.ReadText(table.Find("name")!, 9));
    }

    [Fact]
    public void Read_DamagedTables_GiveCellsOrOneLine()
    {
        var good = File.ReadAllBytes(TestData.Path("tables", "tables.fits"));
        var random = new Random(20263);
        var refused = 0;
        for (var i = 0; i < 400; i++)
        {
            var bytes = good.ToArray();
            bytes[random.Next(2880, bytes.Length)] ^= (byte)(1 << random.Next(8));
            try
            {
                using var file = FitsFile.Open(
                    "damaged",
                    bytes.AsMemory(0, i % 4 == 0 ? random.Next(2880, bytes.Length) : bytes.Length)
                );
                foreach (var table in file.ReadTables())
                {
                    foreach (var column in table.Columns)
                    {
                        _ =
                            column.Kind == FitsColumnKind.Text
                                ? table.RowCount > 0
                                    ? table.ReadText(column, 0).Length
                                    : 0
                                : table.ReadColumn(column).Length;
                    }
                }
            }
            catch (UnreadableFileException problem)
            {
                Assert.DoesNotContain('\n', problem.Message);
                refused++;
            }
        }

        Assert.InRange(refused, 1, 399);
    }

    private static void AssertCell(
        FitsTable table,
        FitsColumn column,
        int row,
        JsonElement expected
    )
    {
        if (expected.ValueKind == JsonValueKind.String)
        {
            Assert.Equal(expected.GetString(), table.ReadText(column, row));
            return;
        }

        var numbers = table.ReadNumbers(column, row);
        var wanted = TestData.Doubles(expected);
        Assert.Equal(wanted.Length, numbers.Length);
        for (var i = 0; i < wanted.Length; i++)
        {
            // Reals of a text table may differ in the last bit: two libraries turn decimals into binary.
            Assert.True(
                double.IsNaN(wanted[i])
                    ? !numbers[i].IsDefined
                    : Math.Abs(wanted[i] - numbers[i].Number) <= Math.Abs(wanted[i]) * 3e-16,
                FormattableString.Invariant($"{column.Name}, row {row}")
            );
        }
    }
}

using System.Text;

namespace Framing.Catalogue.Tests;

/// <summary>Reads a table of the Data folder, which is part of the test program: header, rows, double quotes.</summary>
internal static class CsvTable
{
    public static IReadOnlyList<IReadOnlyDictionary<string, string>> Read(string name)
    {
        using var stream =
            typeof(CsvTable).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The table {name} is not in the test program.");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        var header = Cells(reader.ReadLine() ?? string.Empty);
        var rows = new List<IReadOnlyDictionary<string, string>>();
        while (reader.ReadLine() is { } line)
        {
            var cells = Cells(line);
            Assert.Equal(header.Count, cells.Count);
            rows.Add(
                header
                    .Zip(cells)
                    .ToDictionary(pair => pair.First, pair => pair.Second, StringComparer.Ordinal)
            );
        }

        return rows;
    }

    private static List<string> Cells(string line)
    {
        var cells = new List<string>();
        var cell = new StringBuilder();
        var quoted = false;
        for (var i = 0; i < line.Length; i++)
        {
            var c = line[i];
            if (c == '"' && quoted && i + 1 < line.Length && line[i + 1] == '"')
            {
                cell.Append(c);
                i++;
            }
            else if (c == '"')
            {
                quoted = !quoted;
            }
            else if (c == ',' && !quoted)
            {
                cells.Add(cell.ToString());
                cell.Clear();
            }
            else
            {
                cell.Append(c);
            }
        }

        cells.Add(cell.ToString());
        return cells;
    }
}

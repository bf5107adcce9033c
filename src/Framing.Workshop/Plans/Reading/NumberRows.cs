using System.Globalization;

namespace Framing.Workshop;

/// <summary>Reads a CSV file of two columns of numbers, with a header row and perhaps a column of names.</summary>
internal static class NumberRows
{
    /// <summary>The most rows a file may have.</summary>
    public const int MostRows = 100_000;

    /// <summary>Reads the rows.</summary>
    /// <param name="file">What the file is called in messages.</param>
    /// <param name="text">Its text.</param>
    /// <param name="first">The first column.</param>
    /// <param name="second">The second column.</param>
    /// <param name="groupColumn">A column that may name groups of rows; null when there is none.</param>
    /// <param name="error">What is wrong; null when nothing is.</param>
    /// <returns>The rows. A blank line starts a new block.</returns>
    public static List<NumberRow> Read(
        string file,
        string text,
        (string Name, NumberRange Range) first,
        (string Name, NumberRange Range) second,
        string? groupColumn,
        out PlanFileError? error
    )
    {
        var rows = new List<NumberRow>();
        var lines = text.Split('\n');
        var (a, b, group, columns) = (-1, -1, -1, 0);
        var block = 0;
        error = null;
        for (var i = 0; i < lines.Length && error is null; i++)
        {
            var line = lines[i].Trim();
            if (line.StartsWith('#'))
            {
                continue;
            }

            if (line.Length == 0)
            {
                block += rows.Count > 0 ? 1 : 0;
                continue;
            }

            var cells = Array.ConvertAll(line.Split(','), cell => cell.Trim().Trim('"').Trim());
            if (columns == 0)
            {
                (a, b) = (Array.IndexOf(cells, first.Name), Array.IndexOf(cells, second.Name));
                group = groupColumn is null ? -1 : Array.IndexOf(cells, groupColumn);
                columns = cells.Length;
                error =
                    a < 0 || b < 0
                        ? Fault(
                            i,
                            $"\"{TomlTree.OneLine(line)}\" is not the header; the first line names the columns: {first.Name},{second.Name}"
                        )
                        : null;
                continue;
            }

            if (cells.Length != columns)
            {
                error = Fault(
                    i,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"\"{TomlTree.OneLine(line)}\" has {cells.Length} columns; the header has {columns}"
                    )
                );
            }
            else if (rows.Count == MostRows)
            {
                error = Fault(
                    i,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"there are more than {MostRows} rows; thin them out"
                    )
                );
            }
            else
            {
                error = Cell(i, cells[a], first, out var x) ?? Cell(i, cells[b], second, out _);
                _ = Cell(i, cells[b], second, out var y);
                rows.Add(new(x, y, group < 0 ? "" : cells[group], block, i + 1));
            }
        }

        if (error is null && columns == 0)
        {
            error = new(
                new(file, 0, 0),
                "",
                null,
                $"the file is empty; its first line names the columns: {first.Name},{second.Name}"
            );
        }

        return rows;

        PlanFileError Fault(int line, string problem) =>
            new(new(file, line + 1, 1), "", null, problem);

        PlanFileError? Cell(
            int line,
            string cell,
            (string Name, NumberRange Range) column,
            out double number
        ) =>
            double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out number)
            && column.Range.Holds(number)
                ? null
                : new(
                    new(file, line + 1, 1),
                    column.Name,
                    TomlTree.OneLine(cell),
                    $"give {column.Range.Words}"
                );
    }
}

/// <summary>A row of a file of numbers. A class, so that sorting and grouping use code that is compiled already.</summary>
/// <param name="First">The first column.</param>
/// <param name="Second">The second column.</param>
/// <param name="Group">What the column of groups holds; empty without one.</param>
/// <param name="Block">Which block between blank lines the row belongs to.</param>
/// <param name="Line">The line of the file, counted from 1.</param>
internal sealed record NumberRow(double First, double Second, string Group, int Block, int Line);

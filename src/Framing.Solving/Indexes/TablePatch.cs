using Framing.Catalogue;

namespace Framing.Solving;

/// <summary>The part of the sky that a table of stars covers, and the embedded stars in it.</summary>
internal static class TablePatch
{
    private const double FirstStep = 0.1;
    private const double LastStep = 30.0;
    private const double StarsPerCell = 5.0;

    // A star of the table in the cell of an embedded one, or in a cell beside it, is that star: they are this large.
    private const double SameArcseconds = 3.0;

    /// <summary>The table's stars and the embedded ones of the same part of the sky, brightest first.</summary>
    /// <param name="table">The table.</param>
    /// <param name="embedded">The embedded stars, brightest first.</param>
    /// <returns>The stars and how much of the sky they cover, in steradians.</returns>
    public static (StarRow[] Rows, double Steradians) Join(StarRow[] table, StarRow[] embedded)
    {
        var step = FirstStep;
        var cells = Cells(table, step);
        while (table.Length < StarsPerCell * cells.Count && step < LastStep)
        {
            step *= 2.0;
            cells = Cells(table, step);
        }

        var kept = new List<StarRow>();
        var places = new HashSet<(int, int)>();
        foreach (var star in embedded)
        {
            if (cells.Contains(Cell(star, step)))
            {
                kept.Add(star);
                places.Add(Cell(star, SameArcseconds / 3600.0));
            }
        }

        kept.AddRange(table.Where(star => !IsKnown(star, places)));
        var area = cells.Sum(cell => CellArea(cell, step));
        return ([.. kept.OrderBy(star => star.VMagnitude)], Math.Min(area, 4.0 * Math.PI));
    }

    private static bool IsKnown(StarRow star, HashSet<(int, int)> places)
    {
        const double Step = SameArcseconds / 3600.0;
        var (row, column) = Cell(star, Step);
        for (var i = -1; i <= 1; i++)
        {
            for (var j = -1; j <= 1; j++)
            {
                if (places.Contains((row + i, column + j)))
                {
                    return true;
                }
            }
        }

        return false;
    }

    private static HashSet<(int, int)> Cells(StarRow[] stars, double step) =>
        [.. stars.Select(star => Cell(star, step))];

    private static (int Row, int Column) Cell(StarRow star, double step)
    {
        var row = (int)Math.Floor((star.DeclinationDegrees + 90.0) / step);
        var middle = Math.Min(((row + 0.5) * step) - 90.0, 90.0);
        var width = step / Math.Max(Math.Cos(middle * Math.PI / 180.0), 0.01);
        return (row, (int)Math.Floor(star.RightAscensionDegrees / width));
    }

    private static double CellArea((int Row, int Column) cell, double step)
    {
        var south = Math.Min(((cell.Row * step) - 90.0) * Math.PI / 180.0, Math.PI / 2.0);
        var north = Math.Min(south + (step * Math.PI / 180.0), Math.PI / 2.0);
        var middle = Math.Min(((cell.Row + 0.5) * step) - 90.0, 90.0);
        var width = step / Math.Max(Math.Cos(middle * Math.PI / 180.0), 0.01);
        return Math.Min(width, 360.0) * Math.PI / 180.0 * (Math.Sin(north) - Math.Sin(south));
    }
}

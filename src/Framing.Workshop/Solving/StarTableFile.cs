using System.Globalization;
using Framing.Fits;
using Framing.Sky;
using Framing.Solving;

namespace Framing.Workshop;

/// <summary>Reads a table of stars that somebody brings: CSV with a header row, or the first such table of a FITS file.</summary>
/// <remarks>
/// <para>
/// Columns are known by their names: ra_deg, dec_deg (ICRS, degrees) and mag, and the usual other names of these; where
/// they are, pm_ra_cosdec_mas_yr, pm_dec_mas_yr (or pmra, pmdec) and epoch (or ref_epoch), a Julian year, are used as well.
/// Other columns are passed over, and so are rows without a place or a magnitude.
/// </para>
/// <para>A place with a motion counts for 2000.0 unless an epoch is given; without a motion it stays as it is.</para>
/// </remarks>
public static class StarTableFile
{
    /// <summary>The most rows that are read.</summary>
    public const int MostRows = 5_000_000;

    /// <summary>The fewest stars that are of use.</summary>
    public const int FewestStars = 20;

    /// <summary>Reads a table.</summary>
    /// <param name="path">The file.</param>
    /// <returns>Its stars with those of the embedded catalogue in the same part of the sky.</returns>
    /// <exception cref="InputException">It is no such table: file, line, what stands there, what would be right.</exception>
    /// <exception cref="UnreadableFileException">It is a FITS file that cannot be read.</exception>
    public static ReferenceStars Read(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        var stars = ReadRows(path);
        return stars.Count >= FewestStars
            ? ReferenceStars.FromTable(stars)
            : throw new InputException(
                FormattableString.Invariant(
                    $"{path}: it has {stars.Count} stars with place and magnitude; {FewestStars} and more are of use."
                )
            );
    }

    internal static List<TableStar> ReadRows(string path) =>
        IsFits(path) ? ReadFits(path) : ReadText(path);

    private static bool IsFits(string path)
    {
        try
        {
            using var stream = File.OpenRead(path);
            var start = new byte[9];
            return FitsFile.IsFits(
                start.AsSpan(0, stream.ReadAtLeast(start, start.Length, throwOnEndOfStream: false))
            );
        }
        catch (Exception fault)
            when (fault is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            throw new InputException(
                $"{path}: the star table cannot be read: {TomlTree.OneLine(fault.Message)}",
                fault
            );
        }
    }

    private static List<TableStar> ReadText(string path)
    {
        var stars = new List<TableStar>();
        StarColumns? columns = null;
        var number = 0;
        foreach (var line in File.ReadLines(path))
        {
            number++;
            if (string.IsNullOrWhiteSpace(line) || line.StartsWith('#'))
            {
                continue;
            }

            var cells = Array.ConvertAll(line.Split(','), cell => cell.Trim().Trim('"').Trim());
            if (columns is null)
            {
                columns =
                    StarColumns.Of(cells)
                    ?? throw Wrong(
                        number,
                        $"\"{Short(line)}\" does not name the columns; the first line names them: {StarColumns.Wanted}."
                    );
                continue;
            }

            if (stars.Count == MostRows)
            {
                throw Wrong(
                    number,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"there are more than {MostRows} rows; cut out the part of the sky you need."
                    )
                );
            }

            if (Star(columns, column => Number(cells, column), out var outside) is { } star)
            {
                stars.Add(star);
            }
            else if (outside is not null)
            {
                throw Wrong(number, outside);
            }
        }

        return columns is null
            ? throw new InputException(
                $"{path}: it is empty; its first line names the columns: {StarColumns.Wanted}."
            )
            : stars;

        double Number(string[] cells, int column)
        {
            if (column >= cells.Length)
            {
                throw Wrong(
                    number,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"there are {cells.Length} cells; one in column {column + 1} is wanted."
                    )
                );
            }

            var cell = cells[column];
            return cell.Length == 0 ? double.NaN
                : double.TryParse(
                    cell,
                    NumberStyles.Float,
                    CultureInfo.InvariantCulture,
                    out var value
                )
                    ? value
                : throw Wrong(
                    number,
                    $"\"{Short(cell)}\" is no number; degrees and magnitudes are."
                );
        }

        InputException Wrong(int line, string problem) =>
            new(string.Create(CultureInfo.InvariantCulture, $"{path}: line {line}: {problem}"));
    }

    private static List<TableStar> ReadFits(string path)
    {
        using var file = FitsFile.Open(path);
        foreach (var table in file.ReadTables())
        {
            var usable = table.Columns.Where(column => column.Kind != FitsColumnKind.Text).ToList();
            if (StarColumns.Of([.. usable.Select(column => column.Name)]) is not { } columns)
            {
                continue;
            }

            if (table.RowCount > MostRows)
            {
                throw new InputException(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{path}: NAXIS2 = {table.RowCount}: at most {MostRows} rows are read; cut out the part of the sky you need."
                    )
                );
            }

            foreach (
                var column in new[] { columns.RightAscension, columns.Declination }.Select(place =>
                    usable[place]
                )
            )
            {
                if (column.Unit?.Trim() is { Length: > 0 } unit && !IsDegrees(unit))
                {
                    throw new InputException(
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"{path}: TUNIT{column.Number} = '{Short(unit)}': the column {column.Name} has to be in degrees (deg)."
                        )
                    );
                }
            }

            var values = new Dictionary<int, double[]>();
            for (var i = 0; i < usable.Count; i++)
            {
                if (
                    i == columns.RightAscension
                    || i == columns.Declination
                    || i == columns.Magnitude
                    || i == columns.MotionEast
                    || i == columns.MotionNorth
                    || i == columns.Epoch
                )
                {
                    values[i] = table.ReadColumn(usable[i]);
                }
            }

            var stars = new List<TableStar>();
            for (var row = 0; row < table.RowCount; row++)
            {
                if (Star(columns, column => values[column][row], out var outside) is { } star)
                {
                    stars.Add(star);
                }
                else if (outside is not null)
                {
                    throw new InputException(
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"{path}: row {row + 1}: {outside}"
                        )
                    );
                }
            }

            return stars;
        }

        throw new InputException($"{path}: no table of it has the columns {StarColumns.Wanted}.");
    }

    private static bool IsDegrees(string unit) =>
        unit.ToLowerInvariant() is "deg" or "degree" or "degrees" or "d";

    /// <summary>The star of a row; null when it has no place or no brightness, or one that cannot be.</summary>
    private static TableStar? Star(
        StarColumns columns,
        Func<int, double> number,
        out string? outside
    )
    {
        var ra = number(columns.RightAscension);
        var dec = number(columns.Declination);
        var magnitude = number(columns.Magnitude);
        outside =
            ra is < 0.0 or > 360.0
                ? FormattableString.Invariant($"ra is {ra}; degrees from 0 to 360 are wanted.")
            : dec is < -90.0 or > 90.0
                ? FormattableString.Invariant($"dec is {dec}; degrees from -90 to 90 are wanted.")
            : null;
        if (
            outside is not null
            || !double.IsFinite(ra)
            || !double.IsFinite(dec)
            || !(Math.Abs(magnitude) < 50.0)
        )
        {
            return null;
        }

        var direction = SkyDirection.FromDegrees(ra, dec);
        var east = columns.MotionEast < 0 ? double.NaN : number(columns.MotionEast);
        var north = columns.MotionNorth < 0 ? double.NaN : number(columns.MotionNorth);
        if (!double.IsFinite(east) || !double.IsFinite(north))
        {
            return new(direction, magnitude);
        }

        var motion = new ProperMotion(
            Angle.FromArcseconds(1e-3 * east),
            Angle.FromArcseconds(1e-3 * north)
        );
        var epoch = columns.Epoch < 0 ? 2000.0 : number(columns.Epoch);
        return new(
            epoch is > 1800.0 and < 2200.0 ? motion.Apply(direction, 2000.0 - epoch) : direction,
            magnitude,
            motion
        );
    }

    private static string Short(string text)
    {
        var line = TomlTree.OneLine(text);
        return line.Length <= 40 ? line : line[..40] + "…";
    }
}

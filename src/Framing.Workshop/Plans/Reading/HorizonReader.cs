using Framing.Nights;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>Makes a skyline of the rows of a horizon file.</summary>
internal static class HorizonReader
{
    public const string AzimuthColumn = "azimuth_deg";
    public const string AltitudeColumn = "altitude_deg";

    /// <summary>Reads a horizon file.</summary>
    /// <param name="file">What the file is called in messages.</param>
    /// <param name="text">Its text.</param>
    /// <param name="offset">Added to every azimuth.</param>
    /// <param name="error">What is wrong; null when nothing is.</param>
    /// <returns>The skyline; flat when something is wrong.</returns>
    public static Horizon Read(string file, string text, Angle offset, out PlanFileError? error)
    {
        var rows = NumberRows.Read(
            file,
            text,
            (AzimuthColumn, new("degrees", 0.0, 360.0)),
            (AltitudeColumn, new("degrees", -10.0, 90.0)),
            groupColumn: null,
            out error
        );
        error ??= InOrder(file, rows);
        if (error is null && NorthTwice(rows))
        {
            error =
                rows[0].Second == rows[^1].Second
                    ? null
                    : new(
                        new(file, rows[^1].Line, 1),
                        AzimuthColumn,
                        "360",
                        FormattableString.Invariant(
                            $"this is north again, where line {rows[0].Line} has another altitude; keep one"
                        )
                    );
            rows.RemoveAt(rows.Count - 1);
        }

        if (error is null && rows.Count < 2)
        {
            error = new(new(file, 0, 0), "", null, "a horizon needs two azimuths or more");
        }

        return error is not null
            ? Horizon.Flat
            : new(
                rows.Select(row => new HorizonPoint(
                    Angle.FromDegrees(row.First),
                    Angle.FromDegrees(row.Second)
                )),
                offset
            );
    }

    // A row out of order is more often a slip of the pen than a habit: sorting it silently would draw a spike.
    private static PlanFileError? InOrder(string file, List<NumberRow> rows)
    {
        for (var i = 1; i < rows.Count; i++)
        {
            if (rows[i].First <= rows[i - 1].First)
            {
                return new(
                    new(file, rows[i].Line, 1),
                    AzimuthColumn,
                    FormattableString.Invariant($"{rows[i].First}"),
                    FormattableString.Invariant(
                        $"azimuths have to grow from row to row, from 0 to 360, and the row before has {rows[i - 1].First}"
                    )
                );
            }
        }

        return null;
    }

    private static bool NorthTwice(List<NumberRow> rows) =>
        rows.Count > 1 && rows[0].First == 0.0 && rows[^1].First == 360.0;
}

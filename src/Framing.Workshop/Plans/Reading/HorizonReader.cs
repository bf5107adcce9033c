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
    /// <returns>The skyline by growing azimuth.</returns>
    public static IReadOnlyList<HorizonPoint> Read(
        string file,
        string text,
        Angle offset,
        out PlanFileError? error
    )
    {
        var rows = NumberRows.Read(
            file,
            text,
            (AzimuthColumn, new("degrees", 0.0, 360.0)),
            (AltitudeColumn, new("degrees", -10.0, 90.0)),
            groupColumn: null,
            out error
        );
        if (error is not null)
        {
            return [];
        }

        // 360 is north again; where 0 is given as well both must agree.
        var sorted = rows.ConvertAll(row => row.First >= 360.0 ? row with { First = 0.0 } : row);
        sorted.Sort(ByFirst);
        for (var i = sorted.Count - 1; i > 0; i--)
        {
            if (sorted[i].First > sorted[i - 1].First)
            {
                continue;
            }

            if (sorted[i].Second != sorted[i - 1].Second)
            {
                error = new(
                    new(file, Math.Max(sorted[i].Line, sorted[i - 1].Line), 1),
                    AzimuthColumn,
                    FormattableString.Invariant($"{sorted[i].First}"),
                    "this azimuth is given twice with two altitudes; keep one"
                );
                return [];
            }

            sorted.RemoveAt(i);
        }

        if (sorted.Count < 2)
        {
            error = new(new(file, 0, 0), "", null, "a horizon needs two azimuths or more");
            return [];
        }

        // Turning by the offset moves some azimuths through north, so that the order has to be found again.
        var turned = sorted.ConvertAll(row =>
            row with
            {
                First = (Angle.FromDegrees(row.First) + offset).Wrapped.Radians,
            }
        );
        turned.Sort(ByFirst);
        var horizon = new HorizonPoint[turned.Count];
        for (var i = 0; i < horizon.Length; i++)
        {
            horizon[i] = new(
                Angle.FromRadians(turned[i].First),
                Angle.FromDegrees(turned[i].Second)
            );
        }

        return horizon;
    }

    private static int ByFirst(NumberRow left, NumberRow right) =>
        left.First != right.First
            ? left.First.CompareTo(right.First)
            : left.Line.CompareTo(right.Line);
}

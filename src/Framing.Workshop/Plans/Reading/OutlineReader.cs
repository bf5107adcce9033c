using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>Makes an outline of the rows of an outline file.</summary>
internal static class OutlineReader
{
    public const string RightAscensionColumn = "ra_deg";
    public const string DeclinationColumn = "dec_deg";
    public const string AreaColumn = "area";

    /// <summary>Reads an outline file.</summary>
    /// <param name="file">What the file is called in messages.</param>
    /// <param name="text">Its text: a ring of corners; a blank line, or another name in the column "area", starts another.</param>
    /// <param name="error">What is wrong; null when nothing is.</param>
    /// <returns>The outline; null when there is an error.</returns>
    public static SkyOutline? Read(string file, string text, out PlanFileError? error)
    {
        var rows = NumberRows.Read(
            file,
            text,
            (RightAscensionColumn, new("degrees", 0.0, 360.0)),
            (DeclinationColumn, new("degrees", -90.0, 90.0)),
            AreaColumn,
            out error
        );
        if (error is not null)
        {
            return null;
        }

        if (rows.Count == 0)
        {
            error = new(
                new(file, 0, 0),
                "",
                null,
                "the outline has no corners; give three or more"
            );
            return null;
        }

        var areas = new List<SkyPolygon>();
        foreach (var ring in rows.GroupBy(row => (row.Group, row.Block)))
        {
            var corners = ring.Select(row => SkyDirection.FromDegrees(row.First, row.Second))
                .ToList();
            if (corners.Count > 1 && corners[0] == corners[^1])
            {
                corners.RemoveAt(corners.Count - 1);
            }

            error = Try(file, ring.First().Line, () => areas.Add(new(corners)));
            if (error is not null)
            {
                return null;
            }
        }

        SkyOutline? outline = null;
        error = Try(file, 0, () => outline = new(areas));
        return outline;
    }

    private static PlanFileError? Try(string file, int line, Action make)
    {
        try
        {
            make();
            return null;
        }
        catch (ArgumentException fault)
        {
            // The geometry explains itself in its first sentence; what follows names a parameter.
            var sentence = fault.Message.Split(" (Parameter", 2)[0].TrimEnd('.');
            sentence = char.ToLowerInvariant(sentence[0]) + sentence[1..];
            return new(
                new(file, line, line == 0 ? 0 : 1),
                "",
                null,
                "the outline is no area on the sky: " + sentence
            );
        }
    }
}

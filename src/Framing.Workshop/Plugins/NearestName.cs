namespace Framing.Workshop;

/// <summary>Finds the known name that a mistyped one most likely meant.</summary>
public static class NearestName
{
    /// <summary>The nearest of the known names, or null when none is near. Case, hyphens, underscores and spaces do not count.</summary>
    /// <param name="mistyped">What was written.</param>
    /// <param name="known">The names there are.</param>
    /// <returns>
    /// The name with the fewest letters added, dropped, changed or swapped with a neighbour; at most a third of the
    /// longer name, and the first of equals.
    /// </returns>
    public static string? Among(string mistyped, IEnumerable<string> known)
    {
        string? nearest = null;
        var least = int.MaxValue;
        foreach (var name in known)
        {
            var steps = Steps(mistyped, name);
            if (steps < least && steps <= Math.Max(1, Math.Max(mistyped.Length, name.Length) / 3))
            {
                (nearest, least) = (name, steps);
            }
        }

        return nearest;
    }

    /// <summary>Damerau's steps between two names, restricted to neighbours swapped once; case does not count.</summary>
    private static int Steps(string a, string b)
    {
        var rows = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++)
        {
            rows[i, 0] = i;
        }

        for (var j = 0; j <= b.Length; j++)
        {
            rows[0, j] = j;
        }

        for (var i = 1; i <= a.Length; i++)
        {
            for (var j = 1; j <= b.Length; j++)
            {
                var change = Same(a[i - 1], b[j - 1]) ? 0 : 1;
                var steps = Math.Min(
                    Math.Min(rows[i - 1, j] + 1, rows[i, j - 1] + 1),
                    rows[i - 1, j - 1] + change
                );
                if (i > 1 && j > 1 && Same(a[i - 1], b[j - 2]) && Same(a[i - 2], b[j - 1]))
                {
                    steps = Math.Min(steps, rows[i - 2, j - 2] + 1);
                }

                rows[i, j] = steps;
            }
        }

        return rows[a.Length, b.Length];
    }

    // "to outline" and "TO_OUTLINE" are as near as can be.
    private static bool Same(char a, char b) => Plain(a) == Plain(b);

    private static char Plain(char c) => c is '_' or ' ' ? '-' : char.ToLowerInvariant(c);
}

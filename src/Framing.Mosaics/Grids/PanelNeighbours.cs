namespace Framing.Mosaics;

/// <summary>Which panels of a mosaic are neighbours, and where four of them meet.</summary>
/// <remarks>
/// Neighbours lie one step apart and face each other over more than the corner that panels across a meeting point of four
/// share as well.
/// </remarks>
internal sealed class PanelNeighbours
{
    /// <summary>Rounding of places, in steps.</summary>
    private const double Rounding = 1e-9;

    private PanelNeighbours(
        IReadOnlyList<PanelPair> pairs,
        IReadOnlyList<(int A, int B, int C, int D)> meetings,
        bool isRectangle
    )
    {
        Pairs = pairs;
        Meetings = meetings;
        IsRectangle = isRectangle;
    }

    /// <summary>All pairs: those side by side first, each kind in the order of the panels.</summary>
    public IReadOnlyList<PanelPair> Pairs { get; }

    /// <summary>Panels that meet in fours: top-left, top-right, bottom-left, bottom-right.</summary>
    public IReadOnlyList<(int A, int B, int C, int D)> Meetings { get; }

    /// <summary>True for the neighbours in a full rectangle.</summary>
    public bool IsRectangle { get; }

    /// <summary>The neighbours in a full rectangle.</summary>
    public static PanelNeighbours OfGrid(int columns, int rows)
    {
        List<PanelPair> pairs = [];
        for (var i = 0; i < columns * rows; i++)
        {
            if ((i + 1) % columns != 0)
            {
                pairs.Add(new(i, i + 1, true));
            }
        }

        for (var i = 0; i < columns * (rows - 1); i++)
        {
            pairs.Add(new(i, i + columns, false));
        }

        List<(int, int, int, int)> meetings = [];
        for (var i = 0; i < columns * (rows - 1); i++)
        {
            if ((i + 1) % columns != 0)
            {
                meetings.Add((i, i + 1, i + columns, i + columns + 1));
            }
        }

        return new(pairs, meetings, isRectangle: true);
    }

    /// <summary>The neighbours among panels at given places.</summary>
    /// <param name="places">Middles in steps: to the right and down as displayed.</param>
    /// <param name="overlapRight">What neighbours side by side share, as part of a step.</param>
    /// <param name="overlapDown">What neighbours one above the other share, as part of a step.</param>
    public static PanelNeighbours OfPlaces(
        IReadOnlyList<(double Right, double Down)> places,
        double overlapRight,
        double overlapDown
    )
    {
        List<PanelPair> pairs = [];
        var order = Enumerable
            .Range(0, places.Count)
            .OrderBy(i => places[i].Down)
            .ThenBy(i => places[i].Right)
            .ToArray();
        for (var i = 0; i < order.Length; i++)
        {
            for (var j = i + 1; j < order.Length; j++)
            {
                var (first, second) = (order[i], order[j]);
                var down = places[second].Down - places[first].Down;
                if (down > 1.0 + Rounding)
                {
                    break;
                }

                var right = places[second].Right - places[first].Right;
                if (IsStep(down) && Face(right, overlapRight))
                {
                    pairs.Add(new(first, second, false));
                }
                else if (IsStep(Math.Abs(right)) && Face(down, overlapDown))
                {
                    pairs.Add(right > 0.0 ? new(first, second, true) : new(second, first, true));
                }
            }
        }

        PanelPair[] sorted =
        [
            .. pairs
                .OrderByDescending(pair => pair.AlongWidth)
                .ThenBy(pair => pair.First)
                .ThenBy(pair => pair.Second),
        ];
        return new(sorted, Fours(sorted), isRectangle: false);
    }

    private static bool IsStep(double distance) => Math.Abs(distance - 1.0) <= Rounding;

    /// <summary>True when sides at that distance along them face each other over more than a shared corner.</summary>
    private static bool Face(double shift, double overlap) =>
        1.0 + overlap - Math.Abs(shift) > Math.Min(1.5 * overlap, overlap + 0.5) + Rounding;

    private static List<(int A, int B, int C, int D)> Fours(PanelPair[] pairs)
    {
        var below = pairs
            .Where(pair => !pair.AlongWidth)
            .ToLookup(pair => pair.First, pair => pair.Second);
        var beside = pairs.Where(pair => pair.AlongWidth).ToList();
        var known = beside.Select(pair => (pair.First, pair.Second)).ToHashSet();
        List<(int, int, int, int)> fours = [];
        foreach (var (a, b, _) in beside)
        {
            // Where a panel across the meeting point is a neighbour too, three meet, and three have no hole between them.
            foreach (var c in below[a])
            {
                foreach (var d in below[b])
                {
                    if (
                        known.Contains((c, d))
                        && !below[a].Contains(d)
                        && !below[b].Contains(c)
                        && !known.Contains((a, d))
                        && !known.Contains((c, b))
                    )
                    {
                        fours.Add((a, b, c, d));
                    }
                }
            }
        }

        return fours;
    }
}

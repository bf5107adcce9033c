using Framing.Sky;

namespace Framing.Planning;

/// <summary>The order in which panels are shot: short moves, as many of them as can be ending from the mount's finish side by themselves.</summary>
/// <remarks>
/// <para>
/// A move costs the time of its axes at the fastest speed of the hand control. An axis that moves against its finish side
/// goes past the panel by twice its backlash and comes back, so that it ends from that side after all: that costs the way
/// there and back, and two more holds of a key. So rows are run through one way where the way back is short, and there and
/// back where it is long.
/// </para>
/// <para>
/// Up to <see cref="MostExact"/> panels the cheapest order of all is found. Beyond that the best of the orders by rows and
/// by columns, and of those that always go on to the cheapest panel, is improved until no panel or run of up to three has a
/// better place.
/// </para>
/// </remarks>
public sealed record ShootingRoute
{
    /// <summary>The most panels for which the order is the cheapest of all.</summary>
    public const int MostExact = 11;

    /// <summary>Beyond this many panels the order is not improved: it takes too long.</summary>
    private const int MostImproved = 150;

    private const int LongestRun = 3;

    private ShootingRoute() { }

    /// <summary>The panels by their places in the list, in the order of shooting.</summary>
    public required IReadOnlyList<int> Order { get; init; }

    /// <summary>Moves, out of one fewer than panels, that go past their panel on an axis or on both and come back.</summary>
    public required int PastAndBack { get; init; }

    /// <summary>The time of all moves at the fastest speed, those past and back included.</summary>
    public required TimeSpan Moving { get; init; }

    /// <summary>Finds the order.</summary>
    /// <param name="places">The panels' middles in the mount's own frame: of date.</param>
    /// <param name="rows">The panels' rows, or any other numbers of lines in which they stand.</param>
    /// <param name="columns">The same for their columns.</param>
    /// <param name="moves">What a move costs.</param>
    /// <returns>The order; the same for the same panels.</returns>
    internal static ShootingRoute Of(
        IReadOnlyList<SkyDirection> places,
        IReadOnlyList<int> rows,
        IReadOnlyList<int> columns,
        MoveCost moves
    )
    {
        var count = places.Count;
        var costs = Costs(places, moves);
        int[] order =
            count <= MostExact
                ? RouteSearch.Cheapest(count, costs)
                : RouteSearch.Good(
                    count,
                    costs,
                    [.. Lines(places, rows), .. Lines(places, columns)],
                    count <= MostImproved ? LongestRun : 0
                );
        var steps = Enumerable.Range(1, Math.Max(0, count - 1)).ToList();
        return new()
        {
            Order = order,
            PastAndBack = steps.Count(i => moves.GoesPast(places[order[i - 1]], places[order[i]])),
            Moving = TimeSpan.FromSeconds(steps.Sum(i => costs(order[i - 1], order[i]))),
        };
    }

    /// <summary>The cost of every step; kept in a table where each is asked for many times.</summary>
    private static Func<int, int, double> Costs(IReadOnlyList<SkyDirection> places, MoveCost moves)
    {
        if (places.Count > MostImproved)
        {
            return (from, to) => moves.Seconds(places[from], places[to]);
        }

        var table = new double[places.Count, places.Count];
        for (var from = 0; from < places.Count; from++)
        {
            for (var to = 0; to < places.Count; to++)
            {
                table[from, to] = moves.Seconds(places[from], places[to]);
            }
        }

        return (from, to) => table[from, to];
    }

    /// <summary>Orders line by line: each line from east to west or from west to east, all alike or by turns; lines up or down.</summary>
    private static IEnumerable<int[]> Lines(
        IReadOnlyList<SkyDirection> places,
        IReadOnlyList<int> lines
    )
    {
        var middle = places[places.Count / 2];
        var grouped = Enumerable
            .Range(0, places.Count)
            .GroupBy(i => lines[i])
            .OrderBy(line => line.Key)
            .Select(line => line.OrderBy(East).ThenBy(i => i).ToList())
            .ToList();
        foreach (var down in (bool[])[false, true])
        {
            foreach (var first in (int[])[0, 1])
            {
                foreach (var byTurns in (int[])[0, 1])
                {
                    List<int> order = [];
                    for (var i = 0; i < grouped.Count; i++)
                    {
                        var line = grouped[down ? grouped.Count - 1 - i : i];
                        order.AddRange(
                            (first + (byTurns * i)) % 2 == 0 ? line : Enumerable.Reverse(line)
                        );
                    }

                    yield return [.. order];
                }
            }
        }

        double East(int i) =>
            (places[i].RightAscension - middle.RightAscension).WrappedSigned.Radians;
    }
}

namespace Framing.Mosaics;

/// <summary>Where the panels of a mosaic meet, and which panels can cover what opens there.</summary>
internal sealed class PanelMeetings
{
    private readonly IReadOnlyList<(double Right, double Down)> places;

    public PanelMeetings(Mosaic mosaic)
    {
        places = mosaic.Places;
        var right = Reach(mosaic.Field.TangentWidth, mosaic.Overlap.AlongWidth);
        var down = Reach(mosaic.Field.TangentHeight, mosaic.Overlap.AlongHeight);
        Pairs = [.. mosaic.Neighbours.Pairs];
        Fours = [.. mosaic.Neighbours.Meetings];
        var byDown = Enumerable
            .Range(0, places.Count)
            .OrderBy(i => places[i].Down)
            .ThenBy(i => i)
            .ToArray();
        double[] downs = [.. byDown.Select(i => places[i].Down)];
        NearPairs = [.. Pairs.Select(pair => Near(pair.First, pair.Second))];
        NearFours = [.. Fours.Select(four => Near(four.A, four.D))];

        int[] Near(int first, int last)
        {
            // A step more than that, and a panel no longer reaches what these two leave open.
            var (a, b) = (places[first], places[last]);
            var (left, most) = (
                Math.Min(a.Right, b.Right) - right,
                Math.Max(a.Right, b.Right) + right
            );
            var (top, bottom) = (Math.Min(a.Down, b.Down) - down, Math.Max(a.Down, b.Down) + down);
            var start = Array.BinarySearch(downs, top);
            List<int> near = [];
            for (var i = start < 0 ? ~start : start; i < downs.Length && downs[i] <= bottom; i++)
            {
                if (places[byDown[i]].Right >= left && places[byDown[i]].Right <= most)
                {
                    near.Add(byDown[i]);
                }
            }

            near.Sort();
            return [.. near];
        }
    }

    /// <summary>All pairs of neighbours.</summary>
    public PanelPair[] Pairs { get; }

    /// <summary>Panels that meet in fours: top-left, top-right, bottom-left, bottom-right.</summary>
    public (int A, int B, int C, int D)[] Fours { get; }

    /// <summary>For each pair the panels that can cover what opens between the two.</summary>
    public int[][] NearPairs { get; }

    /// <summary>For each four the panels that can cover what opens between them.</summary>
    public int[][] NearFours { get; }

    /// <summary>True when what opens at one panel can be the same as what opens at the other.</summary>
    public bool CanShare(int one, int other) =>
        Math.Abs(places[one].Right - places[other].Right) < 2.5
        && Math.Abs(places[one].Down - places[other].Down) < 2.5;

    /// <summary>How many steps away a panel can still cover something, and half a step for what is staggered.</summary>
    private static double Reach(double size, double overlap) =>
        Math.Max(Math.Ceiling(size / (size - overlap)) - 1.0, 1.0) + 0.5;
}

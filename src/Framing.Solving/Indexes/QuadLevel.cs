namespace Framing.Solving;

/// <summary>Which stars the quads of an index are made for, and how many each star gets.</summary>
/// <param name="From">The first star that is the faintest of its quads.</param>
/// <param name="To">One past the last.</param>
/// <param name="Neighbours">How many of the nearest brighter stars go into its quads.</param>
/// <param name="Triples">Which three of these neighbours each of its quads takes.</param>
internal sealed record QuadLevel(int From, int To, int Neighbours, byte[] Triples)
{
    /// <summary>Where the embedded catalogue is cut: fields of about 5 and 2.5 degrees are found with the first and second part.</summary>
    private static readonly int[] Cuts = [40_000, 160_000];

    // Seven neighbours in threes so that every two of them meet in just one (the lines of the Fano plane): whatever half of
    // them a frame has lost, in every second case one whole three is left.
    private static readonly byte[] Seven =
    [
        0,
        1,
        2,
        0,
        3,
        4,
        0,
        5,
        6,
        1,
        3,
        5,
        1,
        4,
        6,
        2,
        3,
        6,
        2,
        4,
        5,
    ];

    // For the many faint stars: six neighbours, each in two threes, no two of which share more than one.
    private static readonly byte[] Six = [0, 1, 2, 0, 3, 4, 1, 3, 5, 2, 4, 5];

    /// <summary>The levels for so many stars, the brightest first.</summary>
    public static IEnumerable<QuadLevel> For(int stars)
    {
        var from = 0;
        foreach (var cut in Cuts.Where(cut => cut < stars).Append(stars))
        {
            yield return from < Cuts[^1] ? new(from, cut, 7, Seven) : new(from, cut, 6, Six);
            from = cut;
        }
    }

    /// <summary>Every star once with every three of its nearest brighter neighbours, for a small part of the sky.</summary>
    public static QuadLevel Dense(int stars, int neighbours)
    {
        var triples = new List<byte>();
        for (var a = 0; a < neighbours; a++)
        {
            for (var b = a + 1; b < neighbours; b++)
            {
                for (var c = b + 1; c < neighbours; c++)
                {
                    triples.AddRange([(byte)a, (byte)b, (byte)c]);
                }
            }
        }

        return new(0, stars, neighbours, [.. triples]);
    }
}

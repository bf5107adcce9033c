namespace Framing.Solving;

/// <summary>Grids of the brightest 64, 128, 256 ... stars: at each depth a field holds about as many cells as stars.</summary>
internal sealed class StarLevels
{
    private const int First = 64;

    private readonly SkyGrid[] grids;

    public StarLevels(double[] rightAscension, double[] declination, double steradians)
    {
        Steradians = steradians;
        var counts = new List<int>();
        for (var count = First; ; count *= 2)
        {
            counts.Add(Math.Min(count, rightAscension.Length));
            if (count >= rightAscension.Length)
            {
                break;
            }
        }

        grids = new SkyGrid[counts.Count];
        Parallel.For(
            0,
            grids.Length,
            level =>
                grids[level] = new SkyGrid(
                    rightAscension,
                    declination,
                    counts[level],
                    Math.Min(0.5, Math.Sqrt(2.0 * steradians / Math.Max(counts[level], 1)))
                )
        );
    }

    /// <summary>The part of the sky that holds the stars.</summary>
    public double Steradians { get; }

    /// <summary>The grid of at least so many of the brightest stars, if there are so many.</summary>
    public SkyGrid OfBrightest(int count)
    {
        var level = 0;
        while (level < grids.Length - 1 && grids[level].Count < count)
        {
            level++;
        }

        return grids[level];
    }
}

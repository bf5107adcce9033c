using System.Runtime.CompilerServices;

namespace Framing.Solving;

/// <summary>Stars sorted into cells of about the same size: bands of declination, cut evenly in right ascension.</summary>
internal sealed class SkyGrid
{
    private const double HalfPi = Math.PI / 2.0;

    private readonly double bandHeight;
    private readonly int[] firstCell;
    private readonly int[] starts;
    private readonly int[] stars;

    /// <summary>Sorts stars into cells.</summary>
    /// <param name="rightAscension">Right ascensions, radians, 0 to 2π.</param>
    /// <param name="declination">Declinations, radians.</param>
    /// <param name="count">How many of the stars, from the first on, belong to it.</param>
    /// <param name="step">How large a cell is about, radians.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public SkyGrid(double[] rightAscension, double[] declination, int count, double step)
    {
        var bands = Math.Max(1, (int)Math.Ceiling(Math.PI / step));
        bandHeight = Math.PI / bands;
        firstCell = new int[bands + 1];
        for (var band = 0; band < bands; band++)
        {
            var middle = ((band + 0.5) * bandHeight) - HalfPi;
            var cells = Math.Max(1, (int)(Math.Tau * Math.Cos(middle) / step));
            firstCell[band + 1] = firstCell[band] + cells;
        }

        Count = count;
        starts = new int[firstCell[bands] + 1];
        stars = new int[count];
        var cellOf = new int[count];
        for (var star = 0; star < count; star++)
        {
            var band = Band(declination[star]);
            var cells = firstCell[band + 1] - firstCell[band];
            var cell =
                firstCell[band]
                + Math.Min(cells - 1, (int)(rightAscension[star] / Math.Tau * cells));
            cellOf[star] = cell;
            starts[cell + 1]++;
        }

        for (var cell = 1; cell < starts.Length; cell++)
        {
            starts[cell] += starts[cell - 1];
        }

        var next = starts.AsSpan(0, starts.Length - 1).ToArray();
        for (var star = 0; star < count; star++)
        {
            stars[next[cellOf[star]]++] = star;
        }
    }

    /// <summary>How many stars it holds: the brightest ones.</summary>
    public int Count { get; }

    /// <summary>Adds the stars of every cell that a cone may touch.</summary>
    /// <param name="rightAscension">Its middle, radians, 0 to 2π.</param>
    /// <param name="declination">Its middle, radians.</param>
    /// <param name="radius">Its radius, radians.</param>
    /// <param name="found">Where to put them.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Gather(double rightAscension, double declination, double radius, StarBuffer found)
    {
        var last = Band(declination + radius);
        var half =
            Math.Abs(declination) + radius >= HalfPi
                ? Math.PI
                : Math.Asin(Math.Min(1.0, Math.Sin(radius) / Math.Cos(declination))) + 1e-9;
        for (var band = Band(declination - radius); band <= last; band++)
        {
            var cells = firstCell[band + 1] - firstCell[band];
            var perRadian = cells / Math.Tau;
            var low = (int)Math.Floor((rightAscension - half) * perRadian);
            var high = (int)Math.Floor((rightAscension + half) * perRadian);
            if (high - low + 1 >= cells)
            {
                Add(band, 0, cells - 1, found);
            }
            else if (low < 0)
            {
                Add(band, 0, high, found);
                Add(band, low + cells, cells - 1, found);
            }
            else if (high >= cells)
            {
                Add(band, 0, high - cells, found);
                Add(band, low, cells - 1, found);
            }
            else
            {
                Add(band, low, high, found);
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Add(int band, int low, int high, StarBuffer found)
    {
        if (high < low)
        {
            return;
        }

        var start = starts[firstCell[band] + low];
        found.Add(stars.AsSpan(start, starts[firstCell[band] + high + 1] - start));
    }

    private int Band(double declination) =>
        Math.Clamp((int)((declination + HalfPi) / bandHeight), 0, firstCell.Length - 2);
}

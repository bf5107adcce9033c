using Framing.Sky;

namespace Framing.Catalogue;

/// <summary>
/// The cells of the sky in which the embedded catalogue was thinned out: in each it holds every star down to a magnitude
/// of its own, and none beyond.
/// </summary>
/// <remarks>
/// Bands of 1.8 degrees of declination, each cut into whole cells of about 3.2 square degrees. The catalogue keeps every
/// star brighter than V 10, and of the others the brightest until there are 15 per square degree
/// (tests/reference/catalogue/build_stars.py).
/// </remarks>
internal static class CountingCells
{
    private const int Bands = 100;
    private const double BandDegrees = 180.0 / Bands;

    private static readonly int[] FirstCells = CountCells();

    /// <summary>How many cells there are.</summary>
    public static int Count => FirstCells[Bands];

    /// <summary>A cell by its number.</summary>
    public static CountingCell Cell(int number)
    {
        var band = Array.BinarySearch(FirstCells, number);
        band = band < 0 ? ~band - 1 : band;
        var width = 360.0 / (FirstCells[band + 1] - FirstCells[band]);
        return new(
            number,
            (number - FirstCells[band]) * width,
            width,
            (band * BandDegrees) - 90.0,
            ((band + 1) * BandDegrees) - 90.0
        );
    }

    /// <summary>The cells that may hold a star inside a cone, in rising order.</summary>
    public static List<int> Touching(SkyDirection middle, Angle radius)
    {
        var found = new List<int>();
        var declination = middle.Declination.Degrees;
        var reach = radius.Degrees + SkyCells.SlackDegrees;
        var half = SkyCells.HalfWidth(declination, reach);
        for (var band = Band(declination - reach); band <= Band(declination + reach); band++)
        {
            var count = FirstCells[band + 1] - FirstCells[band];
            var from = (int)Math.Floor((middle.RightAscension.Degrees - half) / 360.0 * count);
            var to = (int)Math.Floor((middle.RightAscension.Degrees + half) / 360.0 * count);
            if (half >= 180.0 || to - from >= count)
            {
                (from, to) = (0, count - 1);
            }

            for (var cell = from; cell <= to; cell++)
            {
                found.Add(FirstCells[band] + (((cell % count) + count) % count));
            }
        }

        found.Sort();
        return found;
    }

    /// <summary>The cell that holds a direction.</summary>
    public static int Holding(SkyDirection direction)
    {
        var band = Band(direction.Declination.Degrees);
        var count = FirstCells[band + 1] - FirstCells[band];
        var cell = (int)(direction.RightAscension.Degrees / 360.0 * count);
        return FirstCells[band] + Math.Min(cell, count - 1);
    }

    /// <summary>The V down to which the catalogue holds every star of a cell; 10 to 12.</summary>
    /// <remarks>
    /// Beyond 12 nothing is called complete, for Tycho-2 itself ends there: that matters in 124 cells, in dark clouds.
    /// </remarks>
    public static double LimitOf(int number) => StarCounts.Embedded.CatalogueLimit(number);

    private static int Band(double declination) =>
        Math.Clamp((int)((declination + 90.0) / BandDegrees), 0, Bands - 1);

    private static int[] CountCells()
    {
        var first = new int[Bands + 1];
        for (var band = 0; band < Bands; band++)
        {
            var middle = Angle.FromDegrees(((band + 0.5) * BandDegrees) - 90.0);
            var count = Math.Round(360.0 * Math.Cos(middle.Radians) / BandDegrees);
            first[band + 1] = first[band] + Math.Max(1, (int)count);
        }

        return first;
    }
}

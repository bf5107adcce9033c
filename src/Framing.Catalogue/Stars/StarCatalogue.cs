using System.Runtime.CompilerServices;
using Framing.Sky;

namespace Framing.Catalogue;

/// <summary>
/// The embedded star catalogue: every star brighter than V 10, and fainter ones where the sky is sparse, so that every
/// square degree has about 15 or more.
/// </summary>
/// <remarks>
/// <list type="number">
/// <item>The table is read where it lies; a search touches only the cells of the sky it needs. Nothing is made per star.</item>
/// <item>Sources: the Tycho-2 catalogue (Høg et al. 2000), magnitudes and numbers of Hipparcos; see NOTICE and
/// tests/reference/catalogue/README.md for what was done to them and how good they are.</item>
/// <item>Safe for use by several threads at once.</item>
/// </list>
/// </remarks>
public sealed class StarCatalogue
{
    private static readonly Lazy<StarCatalogue> TheEmbedded = new(() => new StarCatalogue());

    private readonly StarTable table = new();

    private StarCatalogue() { }

    /// <summary>The catalogue that is part of the program.</summary>
    public static StarCatalogue Embedded => TheEmbedded.Value;

    /// <summary>How many stars there are.</summary>
    public int Count => table.Count;

    /// <summary>The stars within an angle of a direction, brightest first.</summary>
    /// <param name="centre">The middle, ICRS.</param>
    /// <param name="radius">The angle, 0 to 180°; its border belongs to it.</param>
    /// <param name="selection">Which of them; all if null.</param>
    /// <returns>The stars by V; of equal ones the more southern comes first.</returns>
    /// <exception cref="ArgumentException">The centre is no direction.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The radius is outside 0 to 180°.</exception>
    public IReadOnlyList<CatalogueStar> InCone(
        SkyDirection centre,
        Angle radius,
        StarSelection? selection = null
    ) => Brightest(new ConeRegion(centre, radius), selection ?? StarSelection.All);

    /// <summary>The stars inside a polygon, brightest first.</summary>
    /// <param name="polygon">The polygon, ICRS.</param>
    /// <param name="selection">Which of them; all if null.</param>
    /// <returns>The stars by V; of equal ones the more southern comes first.</returns>
    public IReadOnlyList<CatalogueStar> InPolygon(
        SkyPolygon polygon,
        StarSelection? selection = null
    ) => Brightest(new PolygonRegion(polygon), selection ?? StarSelection.All);

    /// <summary>How many stars stand within an angle of a direction; no list is made.</summary>
    /// <param name="centre">The middle, ICRS.</param>
    /// <param name="radius">The angle, 0 to 180°; its border belongs to it.</param>
    /// <param name="selection">Which of them; all if null.</param>
    /// <returns>Their number, at most <see cref="StarSelection.MostStars"/>.</returns>
    /// <exception cref="ArgumentException">The centre is no direction.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The radius is outside 0 to 180°.</exception>
    public int CountInCone(SkyDirection centre, Angle radius, StarSelection? selection = null) =>
        CountIn(new ConeRegion(centre, radius), selection ?? StarSelection.All);

    /// <summary>How many stars stand inside a polygon; no list is made.</summary>
    /// <param name="polygon">The polygon, ICRS.</param>
    /// <param name="selection">Which of them; all if null.</param>
    /// <returns>Their number, at most <see cref="StarSelection.MostStars"/>.</returns>
    public int CountInPolygon(SkyPolygon polygon, StarSelection? selection = null) =>
        CountIn(new PolygonRegion(polygon), selection ?? StarSelection.All);

    /// <summary>Every star as plain numbers, brightest first; of equal ones the more southern comes first.</summary>
    /// <returns>A new list of <see cref="Count"/> rows.</returns>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public StarRow[] AllRows()
    {
        var starts = new int[StarTable.BrightnessSteps + 1];
        for (var star = 0; star < Count; star++)
        {
            starts[table.Hundredths(star) - StarTable.LeastHundredths + 1]++;
        }

        for (var i = 1; i < starts.Length; i++)
        {
            starts[i] += starts[i - 1];
        }

        var rows = new StarRow[Count];
        for (var band = 0; band < table.BandCount; band++)
        {
            for (var number = table.FirstCell(band); number < table.FirstCell(band + 1); number++)
            {
                var cell = table.Cell(band, number);
                for (var star = cell.First; star < cell.End; star++)
                {
                    var brightness = table.Hundredths(star) - StarTable.LeastHundredths;
                    rows[starts[brightness]++] = table.Row(cell, star);
                }
            }
        }

        return rows;
    }

    /// <summary>The star with a number of the Hipparcos catalogue.</summary>
    /// <param name="hipparcos">The number, from 1.</param>
    /// <returns>The star; null if none of the embedded stars has it.</returns>
    public CatalogueStar? WithHipparcos(int hipparcos)
    {
        var star = table.WithNumber(hipparcos);
        return star < 0 ? null : table.Read(table.CellOf(star), star);
    }

    /// <summary>The names of a star.</summary>
    /// <param name="hipparcos">Its number in the Hipparcos catalogue.</param>
    /// <returns>The names; null if it has none.</returns>
    public static StarName? NameOf(int hipparcos)
    {
        var names = NameTable.Embedded;
        var row = names.StarRow(hipparcos);
        return row < 0 ? null : names.StarName(row);
    }

    private List<CatalogueStar> Brightest(SkyRegion region, StarSelection selection)
    {
        // Brightness and place in the table in one number, so that the order costs one plain sort. Only the stars that are
        // wanted are then read in full.
        var order = new List<long>();
        var faintest = Hundredths(selection.FaintestMagnitude);
        foreach (var cell in Cells(region, selection))
        {
            for (var star = cell.First; star < cell.End; star++)
            {
                var brightness = table.Hundredths(star);
                if (brightness > faintest)
                {
                    break;
                }

                order.Add(((long)brightness << 32) + star);
            }
        }

        order.Sort();
        var found = new List<CatalogueStar>(Math.Min(order.Count, selection.MostStars));
        for (var i = 0; i < order.Count && found.Count < selection.MostStars; i++)
        {
            var number = (int)(order[i] & uint.MaxValue);
            var star = table.Read(table.CellOf(number), number);
            if (region.Contains(star.At(selection.JulianYear)))
            {
                found.Add(star);
            }
        }

        return found;
    }

    private int CountIn(SkyRegion region, StarSelection selection)
    {
        var count = 0;
        var faintest = Hundredths(selection.FaintestMagnitude);
        foreach (var cell in Cells(region, selection))
        {
            for (
                var star = cell.First;
                star < cell.End && table.Hundredths(star) <= faintest;
                star++
            )
            {
                var place = table.Read(cell, star).At(selection.JulianYear);
                count += region.Contains(place) ? 1 : 0;
            }
        }

        return Math.Min(count, selection.MostStars);
    }

    /// <summary>The cells from which a star can have moved into the region by the epoch.</summary>
    private List<StarCell> Cells(SkyRegion region, StarSelection selection)
    {
        var years = Math.Abs(selection.JulianYear - CatalogueStar.CatalogueJulianYear);
        return SkyCells.Touching(
            table,
            region.Middle,
            region.Radius + (table.LargestMotion * years)
        );
    }

    /// <summary>The table's whole hundredths that are not fainter than a limit.</summary>
    private static int Hundredths(double magnitude) =>
        (int)Math.Floor(Math.Clamp((magnitude * 100.0) + 1e-6, -1000.0, 10000.0));
}

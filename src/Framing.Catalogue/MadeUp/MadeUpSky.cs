using Framing.Sky;

namespace Framing.Catalogue;

/// <summary>
/// Stars that are made up, where the embedded catalogue ends: with them the sky has as many stars of each brightness, down
/// to V 16, as the real one has at that galactic latitude and longitude.
/// </summary>
/// <remarks>
/// <list type="number">
/// <item>None is brighter than V 10, nor than the magnitude down to which the catalogue is complete around it: real and
/// made-up stars share no magnitude at one place (but a few stars fainter than V 12, and some that are listed for their
/// name), and no real star is left out.</item>
/// <item>A seed makes one sky. Its stars are the same whichever part is asked for, in whatever order.</item>
/// <item>How many: to V 11 the counts of Tycho-2; from there a model of the Milky Way that agrees with the classical totals
/// of the whole sky to 6 % at V 14 and 15 % at V 16. Dark clouds and clusters smaller than some degrees are not in it.
/// Sources and figures: tests/reference/star-counts.</item>
/// <item>They serve the eye, and the tests of what measures pictures: never a position or a count that someone relies on.</item>
/// <item>Safe for use by several threads at once.</item>
/// </list>
/// </remarks>
public sealed class MadeUpSky
{
    /// <summary>The seed of the sky that is made up unless another is asked for.</summary>
    public const ulong UsualSeed = 10;

    /// <summary>The V at which the made-up sky ends.</summary>
    public const double FaintestMagnitude = 16.0;

    private const double FirstLimit = 11.0;

    /// <summary>Makes a sky up.</summary>
    /// <param name="seed">Any number: each makes another sky.</param>
    public MadeUpSky(ulong seed = UsualSeed) => Seed = seed;

    /// <summary>The seed.</summary>
    public ulong Seed { get; }

    /// <summary>Down to which magnitude the embedded catalogue holds every star around a place; made-up stars are fainter.</summary>
    /// <param name="direction">The place, ICRS.</param>
    /// <returns>V, 10 to 12, of the cell of about 3 square degrees that holds the place.</returns>
    /// <exception cref="ArgumentException">No direction.</exception>
    public static double CatalogueLimitAt(SkyDirection direction) =>
        direction.IsDefault
            ? throw new ArgumentException("A limit needs a direction.", nameof(direction))
            : CountingCells.LimitOf(CountingCells.Holding(direction));

    /// <summary>The made-up stars within an angle of a direction, brightest first.</summary>
    /// <param name="centre">The middle, ICRS.</param>
    /// <param name="radius">The angle, 0 to 180°; its border belongs to it.</param>
    /// <param name="selection">How faint and how many; all to V 16 if null. The epoch does not matter: they do not move.</param>
    /// <returns>The stars by V. In the Milky Way there are up to 6,000 per square degree to V 16.</returns>
    /// <exception cref="ArgumentException">The centre is no direction.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The radius is outside 0 to 180°.</exception>
    public IReadOnlyList<MadeUpStar> InCone(
        SkyDirection centre,
        Angle radius,
        StarSelection? selection = null
    ) => Brightest(new ConeRegion(centre, radius), selection ?? StarSelection.All);

    /// <summary>The made-up stars inside a polygon, brightest first.</summary>
    /// <param name="polygon">The polygon, ICRS.</param>
    /// <param name="selection">How faint and how many; all to V 16 if null. The epoch does not matter: they do not move.</param>
    /// <returns>The stars by V. In the Milky Way there are up to 6,000 per square degree to V 16.</returns>
    public IReadOnlyList<MadeUpStar> InPolygon(
        SkyPolygon polygon,
        StarSelection? selection = null
    ) => Brightest(new PolygonRegion(polygon), selection ?? StarSelection.All);

    private List<MadeUpStar> Brightest(SkyRegion region, StarSelection selection)
    {
        var cells = CountingCells.Touching(region.Middle, region.Radius);
        var last = Math.Min(selection.FaintestMagnitude, FaintestMagnitude);
        if (selection.MostStars == int.MaxValue)
        {
            return AllTo(last, region, cells);
        }

        // Few are wanted of perhaps millions: a magnitude deeper each time, until there are enough.
        for (var limit = FirstLimit; ; limit += 1.0)
        {
            var found = AllTo(Math.Min(limit, last), region, cells);
            if (found.Count >= selection.MostStars)
            {
                found.RemoveRange(selection.MostStars, found.Count - selection.MostStars);
                return found;
            }

            if (limit >= last)
            {
                return found;
            }
        }
    }

    /// <summary>All stars down to a magnitude, sorted by it: of equal ones the cells' order counts, south to north.</summary>
    private List<MadeUpStar> AllTo(double faintest, SkyRegion region, List<int> cells)
    {
        var inSteps = new List<MadeUpStar>[Step(FaintestMagnitude) + 1];
        foreach (var number in cells)
        {
            // Most cells lie inside with all they hold, or outside with all; only others need a look at each star.
            var place = CountingCells.Cell(number);
            var whole = region.DistanceToBorder(place.Middle) > place.Radius;
            if (whole && !region.Contains(place.Middle))
            {
                continue;
            }

            var cell = new MadeUpCell(Seed, number);
            while (cell.TryNext(faintest, out var star))
            {
                if (whole || region.Contains(star.Direction))
                {
                    (inSteps[Step(star.VMagnitude)] ??= []).Add(star);
                }
            }
        }

        var found = new List<MadeUpStar>();
        foreach (var stars in inSteps)
        {
            found.AddRange(stars ?? []);
        }

        return found;
    }

    /// <summary>Hundredths of a magnitude beyond the brightest made-up star.</summary>
    private static int Step(double magnitude) => (int)Math.Round((magnitude - 10.0) * 100.0);
}

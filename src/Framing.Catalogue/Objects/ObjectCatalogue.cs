using Framing.Sky;

namespace Framing.Catalogue;

/// <summary>The embedded deep-sky objects, and the search for them and for named stars.</summary>
/// <remarks>
/// <list type="number">
/// <item>5,419 objects: all Messier, Caldwell and Sharpless (second catalogue) numbers, and what is 3 arcmin or larger of the
/// NGC, IC, LBN, LDN, Barnard, van den Bergh and other catalogues; groups that make one picture.</item>
/// <item>Sources and their weaknesses: NOTICE and tests/reference/catalogue/README.md. Every object names its source.</item>
/// <item>Safe for use by several threads at once.</item>
/// </list>
/// </remarks>
public sealed class ObjectCatalogue
{
    private static readonly Lazy<ObjectCatalogue> TheEmbedded = new(() => new ObjectCatalogue());

    private readonly NameTable table = NameTable.Embedded;

    private ObjectCatalogue() { }

    /// <summary>The catalogue that is part of the program.</summary>
    public static ObjectCatalogue Embedded => TheEmbedded.Value;

    /// <summary>How many objects there are; stars are not counted.</summary>
    public int Count => table.ObjectCount;

    /// <summary>Finds an object or a star by a name.</summary>
    /// <param name="words">
    /// A designation or common name as people write it: "ic1805", "heart nebula", "sh2 129", "NGC0281", "Messier 31", "C 20",
    /// "alpha Lyrae", "61 Cyg", "HIP 91262". Case, spaces, hyphens, accents and leading zeros do not matter.
    /// </param>
    /// <returns>The entry; or, if nothing or more than one thing has that name, up to three suggestions.</returns>
    public FindResult Find(string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        return NameSearch.Find(table, words);
    }

    /// <summary>The objects within an angle of a direction, largest first.</summary>
    /// <param name="centre">The middle, ICRS.</param>
    /// <param name="radius">The angle, 0 to 180°; its border belongs to it.</param>
    /// <param name="selection">Which of them; all if null.</param>
    /// <returns>The objects by length, those of unknown size last.</returns>
    /// <exception cref="ArgumentException">The centre is no direction.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The radius is outside 0 to 180°.</exception>
    public IReadOnlyList<DeepSkyObject> InCone(
        SkyDirection centre,
        Angle radius,
        ObjectSelection? selection = null
    ) => Largest(new ConeRegion(centre, radius), selection ?? ObjectSelection.All);

    /// <summary>The objects inside a polygon, largest first.</summary>
    /// <param name="polygon">The polygon, ICRS.</param>
    /// <param name="selection">Which of them; all if null.</param>
    /// <returns>The objects by length, those of unknown size last.</returns>
    public IReadOnlyList<DeepSkyObject> InPolygon(
        SkyPolygon polygon,
        ObjectSelection? selection = null
    ) => Largest(new PolygonRegion(polygon), selection ?? ObjectSelection.All);

    private List<DeepSkyObject> Largest(SkyRegion region, ObjectSelection selection)
    {
        var near = new Neighbourhood(region);
        var smallest = selection.SmallestMajor.Arcminutes * 100.0;
        var found = new List<(int Row, int Size)>();
        for (var row = 0; row < table.ObjectCount; row++)
        {
            var values = table.Object(row);
            var size = values.MajorHundredths;
            var half = selection.Reaching && size > 0 ? size / 200.0 : 0.0;
            if (
                (smallest > 0.0 && size < smallest - 1e-6)
                || !near.MayHold(values.RightAscensionDegrees, values.DeclinationDegrees, half)
            )
            {
                continue;
            }

            if (
                region.Contains(values.Direction)
                || (
                    half > 0.0
                    && region.DistanceTo(values.MiddleOfExtent) <= Angle.FromArcminutes(half)
                )
            )
            {
                found.Add((row, size));
            }
        }

        found.Sort(
            static (left, right) =>
                left.Size != right.Size
                    ? right.Size.CompareTo(left.Size)
                    : left.Row.CompareTo(right.Row)
        );
        var count = Math.Min(found.Count, selection.MostObjects);
        var objects = new List<DeepSkyObject>(count);
        for (var i = 0; i < count; i++)
        {
            objects.Add(new(found[i].Row, table.Object(found[i].Row)));
        }

        return objects;
    }
}

using Framing.Catalogue;
using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Planning;

/// <summary>Makes a target of what the catalogue knows.</summary>
public static class TargetBuilder
{
    /// <summary>An object whose width is at least this part of its length is taken as round.</summary>
    private const double Round = 0.9;

    /// <summary>Minutes of arc between length and width below which a circle is as good.</summary>
    private const double WorthSaying = 2.0;

    /// <summary>The size that stands for a point: a frame needs an outline.</summary>
    private static readonly Angle PointSize = Angle.FromArcminutes(1.0);

    /// <summary>Makes one target of several catalogue entries.</summary>
    /// <param name="entries">One or more entries, each with the name by which the user called it.</param>
    /// <param name="member">Finds the members of a group by their designation; null where the catalogue has none.</param>
    /// <param name="julianYear">The date, as a Julian year, to which the proper motion of stars is applied.</param>
    /// <returns>The target; its notes say where an angle or a size is not known.</returns>
    /// <remarks>
    /// An ellipse is drawn for each object. Where its angle is not known and it is not round, its long axis is kept on all
    /// sides. A group is made of its members if the catalogue has their sizes, else of its own size.
    /// </remarks>
    /// <exception cref="ArgumentException">No entry is given.</exception>
    public static Target FromEntries(
        IReadOnlyList<(CatalogueEntry Entry, string Words)> entries,
        Func<string, CatalogueEntry?> member,
        double julianYear
    )
    {
        ArgumentNullException.ThrowIfNull(entries);
        ArgumentNullException.ThrowIfNull(member);
        if (entries.Count == 0)
        {
            throw new ArgumentException(
                "A target needs at least one catalogue entry.",
                nameof(entries)
            );
        }

        var notes = new List<string>();
        var parts = entries
            .SelectMany(entry => PartsOf(entry.Entry, entry.Words, member, julianYear, notes))
            .ToList();
        var names = entries.Select(entry => NameOf(entry.Entry, entry.Words)).ToList();
        return new(Together(names), parts, notes);
    }

    /// <summary>A target that the user describes by its outline.</summary>
    /// <param name="name">How to call it.</param>
    /// <param name="outline">Its outline, J2000.</param>
    /// <returns>The target.</returns>
    public static Target FromOutline(string name, SkyOutline outline) =>
        new(name, [new(string.Empty, null, outline)], []);

    private static string Together(List<string> names) =>
        names.Count == 1 ? names[0] : string.Join(", ", names.SkipLast(1)) + " and " + names[^1];

    private static IEnumerable<TargetPart> PartsOf(
        CatalogueEntry entry,
        string words,
        Func<string, CatalogueEntry?> member,
        double julianYear,
        List<string> notes
    )
    {
        if (entry is NamedStar star)
        {
            notes.Add($"{entry.Label} is a star: it is framed as a point.");
            return [Part(star, words, Point(star.Star.At(julianYear)))];
        }

        var thing = (DeepSkyObject)entry;
        if (thing.Members.Count > 0)
        {
            var members = thing
                .Members.Select(member)
                .OfType<DeepSkyObject>()
                .Where(part => part.Major is not null)
                .ToList();
            if (members.Count == thing.Members.Count)
            {
                return members.Select(part =>
                    Part(part, part.Id, Ellipse(part, part.Major!.Value, notes))
                );
            }

            if (thing is { Major: { } along, Minor: { } across, MajorAxis: { } axis })
            {
                return
                [
                    Part(
                        thing,
                        words,
                        SkyOutline.Rectangle(thing.MiddleOfExtent, along, across, axis)
                    ),
                ];
            }
        }

        if (thing.Major is { } major)
        {
            return [Part(thing, words, Ellipse(thing, major, notes))];
        }

        notes.Add($"The catalogue has no size for {thing.Label}: it is framed as a point.");
        return [Part(thing, words, Point(thing.MiddleOfExtent))];
    }

    private static TargetPart Part(CatalogueEntry entry, string words, SkyOutline outline) =>
        new(NameOf(entry, words), entry.Id, outline);

    /// <summary>The common name; else the designation that the user wrote, as the catalogue spells it.</summary>
    private static string NameOf(CatalogueEntry entry, string words) =>
        entry.Name
        ?? entry.Names.FirstOrDefault(name => Squeezed(name) == Squeezed(words))
        ?? entry.Id;

    private static string Squeezed(string name) =>
        string.Concat(name.Where(char.IsLetterOrDigit)).ToUpperInvariant();

    private static SkyOutline Ellipse(DeepSkyObject thing, Angle major, List<string> notes)
    {
        var minor = thing.Minor ?? major;
        if (thing.MajorAxis is { } axis)
        {
            return SkyOutline.Ellipse(thing.MiddleOfExtent, major, minor, axis);
        }

        if (minor / major < Round && (major - minor).Arcminutes >= WorthSaying)
        {
            notes.Add(
                FormattableString.Invariant(
                    $"The catalogue does not say which way {thing.Label} runs, only that it is {major.Arcminutes:0.#}′ by {minor.Arcminutes:0.#}′: a circle of {major.Arcminutes:0.#}′ is framed."
                )
            );
        }

        return SkyOutline.Ellipse(thing.MiddleOfExtent, major, major, PositionAngle.North);
    }

    private static SkyOutline Point(SkyDirection direction) =>
        SkyOutline.Ellipse(direction, PointSize, PointSize, PositionAngle.North);
}

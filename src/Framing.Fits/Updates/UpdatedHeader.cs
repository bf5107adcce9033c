namespace Framing.Fits;

/// <summary>A header with another solution in it: what went, what came, and the cards as they will be stored.</summary>
internal sealed class UpdatedHeader
{
    private readonly List<FitsCard> removed = [];
    private readonly List<FitsCard> added = [];
    private readonly List<string> images = [];
    private int? first;

    private UpdatedHeader() { }

    /// <summary>All cards as they will be stored, END left out.</summary>
    public IReadOnlyList<string> Images => images;

    public HeaderChange Change => new(removed, added);

    /// <summary>Puts a solution into a header.</summary>
    /// <param name="header">The header.</param>
    /// <param name="solution">The cards of the solution.</param>
    /// <param name="isTable">True where the picture is kept in a table, whose axes are its own.</param>
    public static UpdatedHeader Of(FitsHeader header, FitsHeaderBuilder solution, bool isTable)
    {
        var updated = new UpdatedHeader();
        updated.Sort(header, isTable);
        var place = updated.Place();
        updated.Add(header, solution);
        updated.images.InsertRange(place, updated.added.Select(card => card.Image));
        return updated;
    }

    /// <summary>Puts a checksum into the card that holds one.</summary>
    public void SetChecksum(string? value)
    {
        var warnings = new List<string>();
        var at = images.FindIndex(image => UnitChecksum.Stands(CardReader.Read(image, warnings)));
        if (at >= 0)
        {
            images[at] = UnitChecksum.With(images[at], value);
        }
    }

    /// <summary>Parts the cards that stay from those of the old solution, with the CONTINUE cards behind these.</summary>
    private void Sort(FitsHeader header, bool isTable)
    {
        var goes = false;
        foreach (var card in header.Cards)
        {
            // The checksum of the picture out of its tiles counts a header that is no more.
            goes =
                card.Keyword == "CONTINUE"
                    ? goes
                    : SolutionKeywords.IsPart(card.Keyword)
                        || (isTable && card.Keyword == "ZHECKSUM");
            if (goes)
            {
                removed.Add(card);
                first ??= images.Count;
            }
            else
            {
                images.Add(card.Image);
            }
        }
    }

    /// <summary>Where the new cards go: to the old ones' place, but before any further axis; else behind the last word.</summary>
    private int Place()
    {
        var warnings = new List<string>();
        var further = images.FindIndex(image =>
            SolutionKeywords.IsWorldCoordinate(CardReader.Read(image, warnings).Keyword)
        );
        if (first is { } place)
        {
            return further >= 0 ? Math.Min(place, further) : place;
        }

        if (further >= 0)
        {
            return further;
        }

        var end = images.Count;
        while (end > 0 && string.IsNullOrWhiteSpace(images[end - 1]))
        {
            end--;
        }

        return end;
    }

    private void Add(FitsHeader header, FitsHeaderBuilder solution)
    {
        var further = FurtherAxes();
        var cards = solution.ToHeader();
        if (further.Count == 0)
        {
            added.AddRange(cards.Cards);
            return;
        }

        // WCSAXES counts further axes that are described; where a CD matrix is given, it must not be singular for them.
        var axes = Math.Max(cards.Integer("WCSAXES") ?? 2, further.Max);
        var extra = new FitsHeaderBuilder();
        if (cards.Cards.Any(card => SolutionKeywords.Pair(card.Keyword, "CD") is not null))
        {
            foreach (var axis in further)
            {
                var both = FormattableString.Invariant($"{axis}_{axis}");
                var diagonal = $"CD{both}";
                if (!header.Has(diagonal))
                {
                    extra.Add(
                        diagonal,
                        (header.Number(FitsHeader.Numbered("CDELT", axis)) ?? 1.0)
                            * (header.Number($"PC{both}") ?? 1.0)
                    );
                }
            }
        }

        added.AddRange(new FitsHeaderBuilder().Add("WCSAXES", axes).ToHeader().Cards);
        added.AddRange(cards.Cards.Where(card => card.Keyword != "WCSAXES"));
        added.AddRange(extra.ToHeader().Cards);
    }

    /// <summary>Axes from the third on that the cards which stay describe.</summary>
    private SortedSet<int> FurtherAxes()
    {
        var warnings = new List<string>();
        var axes = new SortedSet<int>();
        foreach (var image in images)
        {
            var keyword = CardReader.Read(image, warnings).Keyword;
            foreach (var name in (string[])["CTYPE", "CRPIX", "CRVAL", "CDELT"])
            {
                if (SolutionKeywords.Axis(keyword, name) is { } axis and > 2)
                {
                    axes.Add(axis);
                }
            }
        }

        return axes;
    }
}

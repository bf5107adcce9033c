using System.Diagnostics.CodeAnalysis;

namespace Framing.Catalogue;

/// <summary>The answer to a search by name.</summary>
public sealed class FindResult
{
    internal FindResult(
        string words,
        CatalogueEntry? entry,
        bool isAmbiguous,
        IReadOnlyList<Suggestion> suggestions
    )
    {
        Words = words;
        Entry = entry;
        IsAmbiguous = isAmbiguous;
        Suggestions = suggestions;
    }

    /// <summary>What was asked for, as it was asked.</summary>
    public string Words { get; }

    /// <summary>The object or star of that name; null if there is none, or more than one.</summary>
    public CatalogueEntry? Entry { get; }

    /// <summary>True if exactly one thing has that name.</summary>
    [MemberNotNullWhen(true, nameof(Entry))]
    public bool IsFound => Entry is not null;

    /// <summary>True if several things far apart have that name; the suggestions are they.</summary>
    public bool IsAmbiguous { get; }

    /// <summary>Up to three entries that may be meant, the likeliest first; empty if one was found, for words without letters or digits, and for an unknown Hipparcos number.</summary>
    public IReadOnlyList<Suggestion> Suggestions { get; }
}

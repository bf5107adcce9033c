using Framing.Catalogue;

namespace Framing.Workshop;

/// <summary>Says in one line that the catalogue does not know a name, and which ones may be meant.</summary>
public static class UnknownName
{
    /// <summary>Explains a search that found nothing, or more than one thing.</summary>
    /// <param name="result">What the search said.</param>
    /// <returns>What is wrong and what may be meant, without a full stop.</returns>
    public static string Problem(FindResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        var meant = string.Join(
            ", ",
            result.Suggestions.Select(suggestion => suggestion.Entry.Label)
        );
        if (result.IsAmbiguous)
        {
            return $"the name of more than one thing: {meant}; give a designation";
        }

        return result.Suggestions.Count > 0
            ? $"the catalogue knows no such name; did you mean {meant}?"
            : "the catalogue knows no such name; give a designation (IC 1805) or a common name";
    }
}

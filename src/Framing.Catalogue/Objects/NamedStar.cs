namespace Framing.Catalogue;

/// <summary>A star that was looked up by one of its names.</summary>
public sealed class NamedStar : CatalogueEntry
{
    internal NamedStar(CatalogueStar star, StarName? designations, int hipparcos)
        : base(
            FormattableString.Invariant($"HIP {hipparcos}"),
            designations?.Label is { } label && !label.StartsWith("HIP ", StringComparison.Ordinal)
                ? label
                : null,
            star.Direction
        )
    {
        Star = star;
        Designations = designations;
    }

    /// <summary>The star: place, motion, brightness, colour.</summary>
    public CatalogueStar Star { get; }

    /// <summary>Its names; null if it has only a Hipparcos number.</summary>
    public StarName? Designations { get; }

    /// <inheritdoc/>
    public override IReadOnlyList<string> Names => Designations?.All ?? [Id];

    /// <inheritdoc/>
    public override string Label
    {
        get
        {
            var names = Names;
            return names.Count == 1 ? names[0] : $"{names[0]} ({names[1]})";
        }
    }
}

using Framing.Sky;

namespace Framing.Catalogue;

/// <summary>Something in the sky that has a name: a <see cref="DeepSkyObject"/> or a <see cref="NamedStar"/>.</summary>
public abstract class CatalogueEntry
{
    private protected CatalogueEntry(string id, string? name, SkyDirection direction)
    {
        Id = id;
        Name = name;
        Direction = direction;
    }

    /// <summary>The main designation, such as "M 31", "IC 1805" or "HIP 91262".</summary>
    public string Id { get; }

    /// <summary>The common name; null if it has none.</summary>
    public string? Name { get; }

    /// <summary>The catalogued place, ICRS, epoch J2000.0.</summary>
    public SkyDirection Direction { get; }

    /// <summary>All designations and the name, the name first; each of them is found by <see cref="ObjectCatalogue.Find"/> unless another entry has a better claim to it.</summary>
    public abstract IReadOnlyList<string> Names { get; }

    /// <summary>Name and designation for one line of text: "Heart Nebula (IC 1805)", "Vega (alpha Lyr)", "LBN 552".</summary>
    public abstract string Label { get; }

    /// <inheritdoc/>
    public override string ToString() => Label;
}

namespace Framing.Catalogue;

/// <summary>The names of a star.</summary>
/// <param name="Hipparcos">Its number in the Hipparcos catalogue.</param>
/// <param name="Proper">Proper name, such as "Vega"; null if it has none.</param>
/// <param name="Bayer">Bayer's letter spelled out, with its index: "alpha", "alpha 2", "b"; null if it has none.</param>
/// <param name="BayerLetter">The letter itself: "α", "α2", "b"; null if it has none.</param>
/// <param name="Flamsteed">Flamsteed's number; null if it has none.</param>
/// <param name="Constellation">The IAU's three letters, such as "Lyr"; null for some stars that have only a proper name.</param>
/// <remarks>Many proper names are old or little used: on a chart those of stars brighter than V 4 are what people know.</remarks>
public sealed record StarName(
    int Hipparcos,
    string? Proper,
    string? Bayer,
    string? BayerLetter,
    int? Flamsteed,
    string? Constellation
)
{
    /// <summary>What a chart prints: the proper name, else letter and constellation, else number and constellation: "Vega", "δ Lyr", "61 Cyg".</summary>
    public string Label =>
        Proper
        ?? (
            BayerLetter is not null && Constellation is not null ? $"{BayerLetter} {Constellation}"
            : Flamsteed is { } number && Constellation is not null
                ? FormattableString.Invariant($"{number} {Constellation}")
            : FormattableString.Invariant($"HIP {Hipparcos}")
        );

    /// <summary>All designations, the best known first: "Vega", "alpha Lyr", "3 Lyr", "HIP 91262". Each is found by <see cref="ObjectCatalogue.Find"/>.</summary>
    public IReadOnlyList<string> All
    {
        get
        {
            var all = new List<string>(4);
            if (Proper is not null)
            {
                all.Add(Proper);
            }

            if (Bayer is not null && Constellation is not null)
            {
                all.Add($"{Bayer} {Constellation}");
            }

            if (Flamsteed is { } number && Constellation is not null)
            {
                all.Add(FormattableString.Invariant($"{number} {Constellation}"));
            }

            all.Add(FormattableString.Invariant($"HIP {Hipparcos}"));
            return all;
        }
    }
}

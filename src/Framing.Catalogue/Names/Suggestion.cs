namespace Framing.Catalogue;

/// <summary>Something a user may have meant.</summary>
/// <param name="Words">A name of it that is found when typed: "Heart Nebula", "NGC 281".</param>
/// <param name="Entry">The object or star.</param>
public sealed record Suggestion(string Words, CatalogueEntry Entry);

using Framing.Mosaics;

namespace Framing.Planning;

/// <summary>One of the things that make a target.</summary>
/// <param name="Name">What a picture prints beside it; empty for nothing.</param>
/// <param name="CatalogueId">Its main designation in the catalogue; null when the user drew it.</param>
/// <param name="Outline">Its outline on the sky, J2000.</param>
public sealed record TargetPart(string Name, string? CatalogueId, SkyOutline Outline);

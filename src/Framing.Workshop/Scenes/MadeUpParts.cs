namespace Framing.Workshop;

/// <summary>What of a picture may be made up; the legend always says so.</summary>
[Flags]
public enum MadeUpParts
{
    /// <summary>Nothing: only what the catalogue or the user's own picture holds.</summary>
    None = 0,

    /// <summary>Faint stars beyond the catalogue, as many as the sky has there.</summary>
    Stars = 1,

    /// <summary>A glow inside the outlines of nebulae.</summary>
    Nebulae = 2,

    /// <summary>Both.</summary>
    All = Stars | Nebulae,
}

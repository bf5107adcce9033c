namespace Framing.Catalogue;

/// <summary>What a search key stands for.</summary>
/// <param name="IsStar">True for a named star, false for a deep-sky object.</param>
/// <param name="Row">The row of its table.</param>
internal readonly record struct NameTarget(bool IsStar, int Row);

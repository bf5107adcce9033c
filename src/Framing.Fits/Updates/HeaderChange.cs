namespace Framing.Fits;

/// <summary>What writing a solution into a file's header changed.</summary>
/// <param name="Removed">The cards of the solution that stood there before, in their order; empty when there was none.</param>
/// <param name="Added">The cards that stand there now instead.</param>
/// <remarks>Every other card of the file is what it was, byte for byte, but for the value of a CHECKSUM that was right before.</remarks>
public sealed record HeaderChange(IReadOnlyList<FitsCard> Removed, IReadOnlyList<FitsCard> Added);

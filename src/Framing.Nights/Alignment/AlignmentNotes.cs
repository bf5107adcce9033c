namespace Framing.Nights;

/// <summary>The stars for aligning at a time.</summary>
/// <param name="At">The time, UTC.</param>
/// <param name="Stars">The stars, the brightest first; none where none stands well.</param>
public sealed record AlignmentNotes(DateTime At, IReadOnlyList<AlignmentStar> Stars);

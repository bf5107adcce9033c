namespace Framing.Drawing;

/// <summary>How a line is drawn.</summary>
/// <param name="Colour">Its colour.</param>
/// <param name="Width">Its width in pixels.</param>
/// <param name="Dashes">Lengths of dash, gap, dash, gap ... in pixels; empty for a solid line.</param>
/// <param name="Round">True for round ends: a dash of no length becomes a dot.</param>
internal readonly record struct Stroke(
    Colour Colour,
    double Width,
    IReadOnlyList<double>? Dashes = null,
    bool Round = false
);

namespace Framing.Rehearsal;

/// <summary>A star as it falls onto the sensor: pixels of the frame, counted from 0.</summary>
/// <param name="X">Column of its middle.</param>
/// <param name="Y">Row of its middle.</param>
/// <param name="Electrons">All its light.</param>
/// <param name="Colour">B-V.</param>
/// <param name="Width">Full width at half maximum of its core.</param>
/// <param name="TailX">Coma: where the tail ends, from the core.</param>
/// <param name="TailY">The same along y.</param>
/// <param name="IsFaint">True where it drowns in the noise: its image need not be exact.</param>
internal readonly record struct StarLight(
    double X,
    double Y,
    double Electrons,
    double Colour,
    double Width,
    double TailX,
    double TailY,
    bool IsFaint = false
);

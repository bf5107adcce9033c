namespace Framing.Rehearsal;

/// <summary>One of the round spots whose sum is a star's image.</summary>
/// <param name="X">Where it lies from the middle of the star's light, pixels.</param>
/// <param name="Y">The same along y.</param>
/// <param name="Weight">Its share of the light.</param>
/// <param name="Width">Its full width at half maximum.</param>
internal readonly record struct SpreadPart(double X, double Y, double Weight, double Width);

namespace Framing.Imaging;

/// <summary>What the unsaturated stars of a frame usually look like.</summary>
/// <param name="Width">Full width at half maximum in pixels of the plane.</param>
/// <param name="Elongation">Long axis over short axis.</param>
/// <param name="Surround">Light of the eight pixels around the brightest one over the light of that one.</param>
/// <param name="Count">How many peaks tell it.</param>
internal readonly record struct TypicalStar(
    double Width,
    double Elongation,
    double Surround,
    int Count
);

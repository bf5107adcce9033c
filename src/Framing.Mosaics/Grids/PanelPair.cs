namespace Framing.Mosaics;

/// <summary>Two neighbours by their places in the list of panels.</summary>
/// <param name="First">The one to the left or above.</param>
/// <param name="Second">The one to the right or below.</param>
/// <param name="AlongWidth">True for neighbours side by side.</param>
internal readonly record struct PanelPair(int First, int Second, bool AlongWidth);

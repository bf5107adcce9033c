namespace Framing.Imaging;

/// <summary>A place where the smoothed plane stands above its surroundings.</summary>
/// <param name="X">Column from 0.</param>
/// <param name="Y">Row from 0.</param>
/// <param name="Excess">How far above the background the smoothed light is.</param>
internal readonly record struct StarPeak(int X, int Y, float Excess);

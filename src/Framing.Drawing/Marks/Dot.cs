namespace Framing.Drawing;

/// <summary>A round place in the picture.</summary>
internal readonly struct Dot(PicturePoint middle, double radius)
{
    public PicturePoint Middle { get; } = middle;

    public double Radius { get; } = radius;
}

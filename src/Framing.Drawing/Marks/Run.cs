namespace Framing.Drawing;

/// <summary>Places joined by straight lines in order; closed, the last joins the first.</summary>
internal sealed class Run(PicturePoint[] points, bool closed)
{
    public PicturePoint[] Points { get; } = points;

    public bool Closed { get; } = closed;
}

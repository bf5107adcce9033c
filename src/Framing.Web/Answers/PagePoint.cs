namespace Framing.Web;

/// <summary>A place in the sky picture, pixels from its left and upper edge.</summary>
internal readonly record struct PagePoint(double X, double Y);

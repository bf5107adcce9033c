namespace Framing.Sky;

/// <summary>A place in a picture as FITS counts: the middle of the first stored pixel is (1, 1).</summary>
/// <param name="X">Along the first axis, growing with the stored column; pixel k spans k - 0.5 to k + 0.5.</param>
/// <param name="Y">Along the second axis, growing with the stored row.</param>
/// <remarks>
/// A place in an array is an <see cref="ArrayPosition"/>. Nothing here says which row is shown on top: that is the
/// file's affair.
/// </remarks>
public readonly record struct PixelPosition(double X, double Y)
{
    /// <summary>The same place counted from 0.</summary>
    /// <returns>The array position.</returns>
    public ArrayPosition ToArray() => new(X - 1.0, Y - 1.0);
}

namespace Framing.Sky;

/// <summary>A place in a picture as arrays count: the middle of the first stored pixel is (0, 0).</summary>
/// <param name="Column">Along the first axis; column k spans k - 0.5 to k + 0.5.</param>
/// <param name="Row">Along the second axis, in stored order.</param>
public readonly record struct ArrayPosition(double Column, double Row)
{
    /// <summary>The same place as FITS counts.</summary>
    /// <returns>The pixel position.</returns>
    public PixelPosition ToPixel() => new(Column + 1.0, Row + 1.0);
}

namespace Framing.Sky;

/// <summary>World coordinates in one frame, seen from ICRS: each direction is carried.</summary>
internal sealed class CarriedWorldCoordinates : WorldCoordinates
{
    private readonly WorldCoordinates asWritten;
    private readonly EquatorialFrame frame;

    public CarriedWorldCoordinates(WorldCoordinates asWritten, EquatorialFrame frame)
    {
        (this.asWritten, this.frame) = (asWritten, frame);
        Matrix = TryMatrixAt(asWritten.ReferencePixel, out var matrix) ? matrix : asWritten.Matrix;
    }

    public override string Projection => asWritten.Projection;

    public override PixelPosition ReferencePixel => asWritten.ReferencePixel;

    public override SkyDirection ReferenceDirection => frame.ToIcrs(asWritten.ReferenceDirection);

    public override PixelMatrix Matrix { get; }

    public override MapFailure PixelToSky(PixelPosition pixel, out SkyDirection direction)
    {
        var failure = asWritten.PixelToSky(pixel, out direction);
        if (failure == MapFailure.None)
        {
            direction = frame.ToIcrs(direction);
        }

        return failure;
    }

    public override MapFailure SkyToPixel(SkyDirection direction, out PixelPosition pixel) =>
        asWritten.SkyToPixel(frame.FromIcrs(direction), out pixel);

    public override WorldCoordinates WithRowsReversed(int rows) =>
        new CarriedWorldCoordinates(asWritten.WithRowsReversed(rows), frame);

    public override WorldCoordinates Binned(double factor) =>
        new CarriedWorldCoordinates(asWritten.Binned(factor), frame);

    public override WorldCoordinates Cropped(int columns, int rows) =>
        new CarriedWorldCoordinates(asWritten.Cropped(columns, rows), frame);
}

using Framing.Sky;

namespace Framing.Solving;

/// <summary>A frame fitted to the stars it shows.</summary>
/// <param name="Linear">World coordinates without the distortion; the reference pixel is the middle of the frame.</param>
/// <param name="Distortion">The distortion; null when there is none.</param>
/// <param name="Model">What the fit could bend.</param>
/// <param name="Used">Which of the given matches it rests on, rising.</param>
/// <param name="Rejected">Which it left out as too far off, rising.</param>
/// <param name="RmsPixels">Residual of the used stars along one axis, with the degrees of freedom taken into account.</param>
/// <param name="LargestPixels">The largest residual of a used star.</param>
/// <param name="Precision">How well it knows where the frame points.</param>
public sealed record FieldFit(
    TanWorldCoordinates Linear,
    SipTerms? Distortion,
    FitModel Model,
    IReadOnlyList<int> Used,
    IReadOnlyList<int> Rejected,
    double RmsPixels,
    double LargestPixels,
    FieldPrecision Precision
)
{
    /// <summary>Residual of the used stars along one axis, on the sky.</summary>
    public Angle Rms => Linear.Matrix.Scale * RmsPixels;

    /// <summary>The direction that a place in the frame shows.</summary>
    /// <param name="pixel">The place, as FITS counts.</param>
    /// <returns>The direction, ICRS.</returns>
    public SkyDirection PixelToSky(PixelPosition pixel)
    {
        if (Distortion is null)
        {
            return Linear.PixelToSky(pixel);
        }

        var (u, v) = Distortion.Shift(
            pixel.X - Linear.ReferencePixel.X,
            pixel.Y - Linear.ReferencePixel.Y
        );
        return Linear.PixelToSky(new(pixel.X + u, pixel.Y + v));
    }

    /// <summary>The place in the frame at which a direction appears.</summary>
    /// <param name="direction">The direction, ICRS.</param>
    /// <param name="pixel">The place; meaningless when the answer is false.</param>
    /// <returns>False behind the tangent plane, and where the distortion is no longer one to one.</returns>
    public bool TrySkyToPixel(SkyDirection direction, out PixelPosition pixel)
    {
        if (!Linear.TrySkyToPixel(direction, out pixel))
        {
            return false;
        }

        if (Distortion is null)
        {
            return true;
        }

        var reference = Linear.ReferencePixel;
        var settled = Distortion.TryUndo(
            pixel.X - reference.X,
            pixel.Y - reference.Y,
            out var u,
            out var v
        );
        pixel = new(reference.X + u, reference.Y + v);
        return settled;
    }
}

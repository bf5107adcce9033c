using Framing.Sky;

namespace Framing.Imaging;

/// <summary>Takes values between the samples of a plane.</summary>
internal abstract class PlaneSampler
{
    /// <summary>How many samples around a place are needed for the fast way.</summary>
    public abstract int Margin { get; }

    /// <summary>What is added to a place so that the sample wanted is the next below.</summary>
    public virtual double Shift => 0.0;

    /// <summary>The sampler of a kind of interpolation.</summary>
    public static PlaneSampler Of(Interpolation interpolation) =>
        interpolation switch
        {
            Interpolation.Nearest => new NearestSampler(),
            Interpolation.Bilinear => new BilinearSampler(),
            Interpolation.Lanczos3 => new LanczosSampler(),
            _ => throw new ArgumentOutOfRangeException(
                nameof(interpolation),
                interpolation,
                "There is no such interpolation."
            ),
        };

    /// <summary>The value at a place within the outer edges, whatever is missing around it.</summary>
    /// <returns>NaN when the samples that count for half or more are not defined.</returns>
    public abstract float At(ReadOnlySpan<float> plane, int width, int height, PixelPosition pixel);

    /// <summary>The values of a row of places, all well within the plane; not finite where one needs <see cref="At"/>.</summary>
    /// <param name="first">The sample that counts as first.</param>
    /// <param name="width">Samples in a row of the plane.</param>
    /// <param name="places">The places.</param>
    /// <param name="result">Receives the values.</param>
    public abstract void Row(
        ref readonly float first,
        int width,
        PlacesInPlane places,
        Span<float> result
    );
}

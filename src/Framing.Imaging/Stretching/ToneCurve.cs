namespace Framing.Imaging;

/// <summary>How the samples of one plane become brightness from 0 (black) to 1 (white).</summary>
/// <param name="Black">The sample shown black, and everything below it.</param>
/// <param name="White">The sample shown white, and everything above it; more than <paramref name="Black"/>.</param>
/// <param name="Middle">The share of the way from black to white that is shown half bright; between 0 and 1.</param>
/// <remarks>
/// The curve is the one fraction of two straight lines that keeps 0 and 1 where they are and takes the middle m to 1/2:
/// y = (1 - m) t / ((1 - 2m) t + m). It rises steeply where the sky's faint things are and bends gently towards the stars.
/// </remarks>
public readonly record struct ToneCurve(float Black, float White, float Middle)
{
    /// <summary>How far a sample stands on the way from black to white: below 0 darker than black, above 1 brighter than white.</summary>
    /// <param name="sample">The sample.</param>
    /// <returns>The share; NaN for NaN.</returns>
    public float Share(float sample) => (sample - Black) / (White - Black);

    /// <summary>The share of the way that is shown at a brightness.</summary>
    /// <param name="brightness">The brightness, 0 to 1.</param>
    /// <returns>The share, 0 to 1.</returns>
    public float ShareShownAt(float brightness) =>
        brightness * Middle / (1f - Middle - (brightness * (1f - (2f * Middle))));

    /// <summary>The brightness of a sample.</summary>
    /// <param name="sample">The sample.</param>
    /// <returns>0 to 1; NaN for NaN.</returns>
    public float Apply(float sample)
    {
        var t = (sample - Black) / (White - Black);
        return float.IsNaN(t) ? float.NaN
            : t <= 0f ? 0f
            : t >= 1f ? 1f
            : (1f - Middle) * t / (((1f - (2f * Middle)) * t) + Middle);
    }

    /// <summary>The middle that shows a place of the way from black to white at a wanted brightness.</summary>
    /// <param name="share">The place, between 0 and 1.</param>
    /// <param name="brightness">The brightness, between 0 and 1.</param>
    /// <returns>The middle, between 0.0001 and 0.9999.</returns>
    public static float MiddleFor(float share, float brightness) =>
        Math.Clamp(
            share * (1f - brightness) / ((brightness * (1f - (2f * share))) + share),
            0.0001f,
            0.9999f
        );
}

namespace Framing.Rehearsal;

/// <summary>What the pixels under a colour filter receive.</summary>
/// <remarks>Shares of a third or so, and a straight line in B-V for stars: enough for the eye, no photometry.</remarks>
internal static class ColourShares
{
    private static readonly float[] all = [1f, 1f, 1f, 1f];

    /// <summary>Of the empty sky.</summary>
    public static float[] OfSky(string? pattern) =>
        pattern is null ? all : [.. pattern.Select(Sky)];

    /// <summary>Of a star.</summary>
    public static void OfStar(string? pattern, double colour, Span<float> shares)
    {
        for (var i = 0; i < 4; i++)
        {
            var slope = pattern?[i] switch
            {
                null or 'G' => 0.0,
                'R' => 0.55,
                _ => -0.55,
            };
            shares[i] = (float)(
                (pattern is null ? 1.0 : Sky(pattern[i]))
                * Math.Pow(10.0, 0.4 * slope * (Math.Clamp(colour, -0.4, 2.2) - 0.65))
            );
        }
    }

    private static float Sky(char filter) =>
        filter switch
        {
            'R' => 0.28f,
            'G' => 0.4f,
            _ => 0.3f,
        };
}

namespace Framing.Imaging;

/// <summary>The stars of a frame, and what the frame is like.</summary>
/// <remarks>All pixels are those of the file, before any averaging; all brightnesses are the file's numbers.</remarks>
public sealed record FoundStars
{
    /// <summary>The stars, greatest flux first (saturated ones where their cut-off flux puts them).</summary>
    public required IReadOnlyList<FoundStar> Stars { get; init; }

    /// <summary>What the frame is.</summary>
    public required StarVerdict Verdict { get; init; }

    /// <summary>Columns of the file.</summary>
    public required int WidthPx { get; init; }

    /// <summary>Rows of the file.</summary>
    public required int HeightPx { get; init; }

    /// <summary>The background: the median over the frame.</summary>
    public double Background { get; init; }

    /// <summary>The noise of a pixel about the background, 1 sigma: the median over the frame.</summary>
    public double Noise { get; init; }

    /// <summary>The usual full width at half maximum of unsaturated stars in pixels; null when there are too few to tell.</summary>
    public double? TypicalWidthPx { get; init; }

    /// <summary>The usual elongation of unsaturated stars; well above 1.3 on a trailed frame; null when there are too few to tell.</summary>
    public double? TypicalElongation { get; init; }

    /// <summary>Points that were left out as too sharp for a star: hot pixels, hits of particles.</summary>
    public int HotPixels { get; init; }

    /// <summary>Straight lines of light that were left out: satellites, aeroplanes.</summary>
    public int Trails { get; init; }

    /// <summary>True when the pixels stand under a colour filter (a Bayer pattern) that had to be evened out.</summary>
    public bool HasColourFilter { get; init; }

    /// <summary>What to tell somebody when the frame does not serve; null when it shows stars.</summary>
    /// <remarks>A clause without a full stop, to follow the name of the file: "no stars: ...".</remarks>
    public string? Complaint =>
        Verdict switch
        {
            StarVerdict.Stars => null,
            StarVerdict.TooFewStars => FormattableString.Invariant(
                $"too few stars: {Stars.Count} found; expose longer, or wait for clearer sky"
            ),
            StarVerdict.Even =>
                "no stars: the frame is even all over, as a flat, a dark or a bias is, or a covered lens, or cloud",
            StarVerdict.Overexposed =>
                "no stars: most of the frame is as bright as it can be; expose shorter, or wait for the dark",
            StarVerdict.Daylight =>
                "no stars: the frame is full of other structure, as a picture taken by day is",
            StarVerdict.Defocused => TypicalWidthPx is { } width
                ? FormattableString.Invariant(
                    $"out of focus: its stars are discs about {width:0} px wide; focus and take it again"
                )
                : "out of focus: its stars are wide discs; focus and take it again",
            _ => throw new InvalidOperationException($"Not a verdict: {Verdict}."),
        };
}

namespace Framing.Solving;

/// <summary>Why a frame was not solved.</summary>
public enum SolveRefusal
{
    /// <summary>It was solved.</summary>
    None,

    /// <summary>The frame shows too few stars to be certain.</summary>
    TooFewStars,

    /// <summary>Its stars match nothing on the part of the sky and at the scales that were looked at.</summary>
    MatchesNothing,
}

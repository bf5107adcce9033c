using Framing.Sky;

namespace Framing.Solving;

/// <summary>Where a frame points.</summary>
/// <param name="Fit">World coordinates, what they rest on and how good they are.</param>
/// <param name="Matches">The stars, brightest detection first.</param>
/// <param name="FalseMatchProbability">
/// A bound on the chance that stars as many as these fall together by chance in a search of this length: the chance of one
/// guess times the guesses.
/// </param>
public sealed record SolvedFrame(
    FieldFit Fit,
    IReadOnlyList<MatchedStar> Matches,
    double FalseMatchProbability
)
{
    /// <summary>The direction of the frame's middle, ICRS.</summary>
    public SkyDirection Centre => Fit.Linear.ReferenceDirection;

    /// <summary>Sky per pixel at the middle.</summary>
    public Angle Scale => Fit.Linear.Matrix.Scale;

    /// <summary>Position angle of the file's second axis (+y) at the middle.</summary>
    public PositionAngle Angle => Fit.Linear.Matrix.MeanPositionAngle;

    /// <summary>True where the frame, with its second axis up, is mirrored against the sky.</summary>
    public bool IsMirrored => Fit.Linear.Matrix.IsMirrored;
}

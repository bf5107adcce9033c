using Framing.Sky;

namespace Framing.Solving.Tests;

/// <summary>A made-up list of detections with its truth. Made without the solver's code.</summary>
/// <param name="Detections">The list, in no order.</param>
/// <param name="Width">Columns.</param>
/// <param name="Height">Rows.</param>
/// <param name="RealStars">How many of the detections are catalogue stars.</param>
/// <param name="Centre">Where the middle of the frame points.</param>
/// <param name="Scale">Sky per pixel there.</param>
/// <param name="UpDegrees">Position angle of +y there.</param>
/// <param name="Mirrored">Parity of the file.</param>
/// <param name="JulianYear">When.</param>
internal sealed record StarList(
    IReadOnlyList<DetectedStar> Detections,
    int Width,
    int Height,
    int RealStars,
    SkyDirection Centre,
    Angle Scale,
    double UpDegrees,
    bool Mirrored,
    double JulianYear
)
{
    public SolveRequest Request => new(Detections, Width, Height) { JulianYear = JulianYear };
}

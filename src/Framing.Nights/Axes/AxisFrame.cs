using Framing.Sky;

namespace Framing.Nights;

/// <summary>A solved frame for finding the mount's axis.</summary>
/// <param name="Pose">Where it looks and how it is turned, J2000.</param>
/// <param name="Utc">The middle of its exposure; the kind must be UTC.</param>
/// <param name="CentreSigma">Standard deviation of its middle on each axis.</param>
/// <param name="TurnSigma">Standard deviation of its position angle.</param>
public sealed record AxisFrame(CameraPose Pose, DateTime Utc, Angle CentreSigma, Angle TurnSigma);

namespace Framing.Solving;

/// <summary>A guess that is certain enough.</summary>
/// <param name="Map">Where the frame points.</param>
/// <param name="FalseMatchProbability">Bound on the chance that it is wrong.</param>
/// <param name="RmsPixels">How far its stars lie from the detections, along one axis.</param>
internal sealed record Finding(PlaneMap Map, double FalseMatchProbability, double RmsPixels);

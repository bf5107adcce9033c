namespace Framing.Planning;

/// <summary>A frame that is no picture of the sky, and is not meant to be one.</summary>
/// <param name="File">The file.</param>
/// <param name="Kind">Flat, dark or bias.</param>
public sealed record CalibrationFrame(string File, ShotKind Kind);

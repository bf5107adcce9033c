namespace Framing.Workshop;

/// <summary>A made frame on the disk.</summary>
/// <param name="File">The frame, whole path.</param>
/// <param name="TruthFile">The truth about it, whole path.</param>
/// <param name="Panel">The panel whose coordinates were typed for it; null when none.</param>
/// <param name="Start">Start of its exposure, UTC.</param>
public sealed record DeliveredFrame(string File, string TruthFile, int? Panel, DateTime Start);

namespace Framing.Planning;

/// <summary>A frame that does not count.</summary>
/// <param name="File">The file.</param>
/// <param name="Reason">Why, in a clause without a full stop.</param>
public sealed record LeftOutFrame(string File, string Reason);

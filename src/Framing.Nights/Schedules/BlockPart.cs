namespace Framing.Nights;

/// <summary>A block in an order of shooting whose time is not settled yet.</summary>
internal readonly record struct BlockPart(int Task, int Subs);

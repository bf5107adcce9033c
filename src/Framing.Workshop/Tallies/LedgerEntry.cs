using Framing.Planning;

namespace Framing.Workshop;

/// <summary>One file of the ledger: by what it is told to be unchanged, and what it holds.</summary>
/// <param name="Path">The whole path.</param>
/// <param name="Length">Its length in bytes.</param>
/// <param name="WrittenTicks">When it was last written, UTC, in ticks.</param>
/// <param name="Frame">What it holds.</param>
internal sealed record LedgerEntry(string Path, long Length, long WrittenTicks, ShotFrame Frame);

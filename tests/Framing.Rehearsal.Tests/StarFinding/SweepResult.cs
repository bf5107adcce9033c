using Framing.Imaging;
using Framing.Solving;

namespace Framing.Rehearsal.Tests.StarFinding;

/// <summary>What became of one frame of the sweep.</summary>
internal sealed record SweepResult(
    int Number,
    RehearsedFrame Frame,
    FoundStars Found,
    Pairing Pairing,
    SolveAnswer Hinted,
    SolveAnswer Blind
)
{
    /// <summary>Stars of the catalogue that were found.</summary>
    public int RealStars { get; } = Pairing.RealFound;
}

using Framing.Nights;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>What fits a rig in a night.</summary>
/// <param name="Rig">Lens and camera.</param>
/// <param name="Site">The site.</param>
/// <param name="Dark">The dark time; none where the Sun stays above -6°.</param>
/// <param name="Phase">The Moon's phase at midnight.</param>
/// <param name="MoonUp">When the Moon is up in the night.</param>
/// <param name="Things">What fits, the longest clear in the dark first.</param>
public sealed record TonightAnswer(
    Rig Rig,
    SiteSection Site,
    DarkTime Dark,
    MoonPhase Phase,
    IReadOnlyList<UtcInterval> MoonUp,
    IReadOnlyList<TonightThing> Things
);

using Framing.Catalogue;
using Framing.Nights;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>Something that fits a rig in a night.</summary>
/// <param name="Thing">What it is.</param>
/// <param name="Fit">How it fits.</param>
/// <param name="Reach">When it is clear in the dark, and where it then stands highest.</param>
/// <param name="FromMoon">How far the Moon stands from it when it stands highest.</param>
public sealed record TonightThing(
    DeepSkyObject Thing,
    FrameFit Fit,
    DarkReach Reach,
    Angle FromMoon
);

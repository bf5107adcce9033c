using Framing.Sky;

namespace Framing.Nights;

/// <summary>How the stars of one filter's subs trail.</summary>
/// <param name="Filter">The filter's name.</param>
/// <param name="Sub">Exposure of one sub.</param>
/// <param name="GuidedPx">Trail in the worst corner with a guider, (binned) pixels.</param>
/// <param name="UnguidedPx">The same without a guider.</param>
/// <param name="ErrorGuided">How far the axis may miss the pole for this sub with a guider.</param>
/// <param name="ErrorUnguided">The same without a guider.</param>
public sealed record SubTrail(
    string Filter,
    TimeSpan Sub,
    double GuidedPx,
    double UnguidedPx,
    Angle ErrorGuided,
    Angle ErrorUnguided
);

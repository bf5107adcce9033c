namespace Framing.Planning;

/// <summary>What one panel has through one filter in subs of one length.</summary>
/// <param name="Filter">The filter, as the plan spells it where it knows it; empty where the frames name none.</param>
/// <param name="SubSeconds">The exposure of one sub.</param>
/// <param name="Frames">How many frames count.</param>
/// <param name="Rejected">How many more were left out.</param>
/// <param name="ExposureSeconds">What the counted ones add up to.</param>
public sealed record FilterTally(
    string Filter,
    double SubSeconds,
    int Frames,
    int Rejected,
    double ExposureSeconds
);

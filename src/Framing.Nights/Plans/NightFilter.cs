namespace Framing.Nights;

/// <summary>What is shot through one filter.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Sub">Exposure of one sub, more than 0.</param>
/// <param name="Readout">From the end of a sub to the begin of the next.</param>
/// <param name="DitherEvery">Subs between two dithers; 0 for none.</param>
/// <param name="DitherTime">What a dither takes with settling.</param>
/// <param name="Share">Its share of the exposure against the other filters' shares, more than 0.</param>
/// <param name="Moon">When the Moon keeps it from being used.</param>
public sealed record NightFilter(
    string Name,
    TimeSpan Sub,
    TimeSpan Readout,
    int DitherEvery,
    TimeSpan DitherTime,
    double Share,
    MoonRule Moon
);

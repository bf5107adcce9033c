using Framing.Nights;

namespace Framing.Workshop;

/// <summary>What is shot through one filter: [[night.filter]].</summary>
/// <param name="Name">The filter's name.</param>
/// <param name="Sub">Exposure of one sub.</param>
/// <param name="Readout">Time from the end of a sub to the start of the next.</param>
/// <param name="DitherEvery">Subs between two dithers; 0 when there is no dithering.</param>
/// <param name="DitherTime">Time that a dither takes with settling.</param>
/// <param name="Share">Share of the goal against the other filters' shares, more than 0.</param>
/// <param name="TrailLimitPx">How far a star may trail in a sub, in (binned) pixels; the night's own limit unless given.</param>
/// <param name="Moon">When the Moon keeps it from being used.</param>
public sealed record FilterSection(
    string Name,
    TimeSpan Sub,
    TimeSpan Readout,
    int DitherEvery,
    TimeSpan DitherTime,
    double Share,
    double TrailLimitPx,
    MoonRule Moon
);
